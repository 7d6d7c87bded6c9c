package gapwise.effect;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * How a value on the analysis scale is carried back to what people read. It never falls, so limits
 * stay limits.
 *
 * @param function from analysis scale to what is shown
 * @param n the number of patients the way back depends on; empty on all scales but the double
 *     arcsine
 * @param also the same with other numbers of patients, to show how far the answer hangs on it
 */
public record BackTransform(
    DoubleUnaryOperator function, OptionalDouble n, List<BackTransform> also) {
  /** Analysis scale and shown scale are one. */
  public static final BackTransform NONE = of(x -> x);

  /** From a logarithm to a ratio or a mean. */
  public static final BackTransform EXPONENTIAL = of(Math::exp);

  public BackTransform {
    also = List.copyOf(also);
  }

  /** A way back that depends on nothing else. */
  public static BackTransform of(DoubleUnaryOperator function) {
    return new BackTransform(function, OptionalDouble.empty(), List.of());
  }

  /** A value as people read it. */
  public double apply(double value) {
    return function.applyAsDouble(value);
  }
}
