package gapwise.effect;

/**
 * Lower and upper limit.
 *
 * @param lower finite, not above upper
 * @param upper finite
 */
public record Interval(double lower, double upper) {
  public Interval {
    if (!(lower <= upper && Double.isFinite(lower) && Double.isFinite(upper))) {
      throw new IllegalArgumentException("no interval: " + lower + " to " + upper);
    }
  }
}
