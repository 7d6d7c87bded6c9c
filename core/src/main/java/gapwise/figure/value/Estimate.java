package gapwise.figure.value;

import java.util.Objects;

/**
 * A value with its interval in the unit of the figure's {@link Quantity}: a proportion from 0 to 1,
 * a ratio above 0, months, centimetres.
 *
 * @param value finite
 * @param limits its interval; both the value where no interval is known
 * @param intervalKnown false for a value that a paper reports without a standard deviation, which
 *     is drawn and never pooled
 */
public record Estimate(double value, Limits limits, boolean intervalKnown) {
  private static final double FARTHEST = 1e100;

  public Estimate {
    Check.finite(value, "value");
    Objects.requireNonNull(limits, "limits");
  }

  /** A value with its interval. */
  Estimate(double value, Limits limits) {
    this(value, limits, true);
  }

  /** A value that is reported without a standard deviation. */
  public static Estimate alone(double value) {
    return new Estimate(value, new Limits(value, value), false);
  }

  /**
   * The same from three numbers. A limit that no double holds, as of a ratio over a mean near 0, is
   * told and drawn as one that is very far off.
   */
  public static Estimate of(double value, double lower, double upper) {
    return new Estimate(value, new Limits(Math.max(-FARTHEST, lower), Math.min(FARTHEST, upper)));
  }

  public double lower() {
    return limits.lower();
  }

  public double upper() {
    return limits.upper();
  }
}
