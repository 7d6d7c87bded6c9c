package gapwise.figure.value;

/**
 * Two limits of an interval in the unit of the figure's {@link Quantity}.
 *
 * @param lower finite, not above {@code upper}
 * @param upper finite
 */
public record Limits(double lower, double upper) {
  public Limits {
    Check.finite(lower, "lower");
    Check.finite(upper, "upper");
    if (lower > upper) {
      throw new IllegalArgumentException("lower " + lower + " lies above upper " + upper);
    }
  }
}
