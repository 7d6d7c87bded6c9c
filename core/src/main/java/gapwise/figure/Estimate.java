package gapwise.figure;

import java.util.Objects;

/**
 * A value with its interval in the unit of the figure's {@link Measure}: a proportion from 0 to 1,
 * a ratio above 0, months, centimetres.
 *
 * @param value finite
 * @param limits its interval
 */
public record Estimate(double value, Limits limits) {
  public Estimate {
    Check.finite(value, "value");
    Objects.requireNonNull(limits, "limits");
  }

  /** The same from three numbers. */
  public static Estimate of(double value, double lower, double upper) {
    return new Estimate(value, new Limits(lower, upper));
  }

  double lower() {
    return limits.lower();
  }

  double upper() {
    return limits.upper();
  }
}
