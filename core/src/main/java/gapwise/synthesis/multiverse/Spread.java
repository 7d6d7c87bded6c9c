package gapwise.synthesis.multiverse;

import java.util.Arrays;

/**
 * How values are spread. Quartiles and median by straight lines between the ordered values (type 7
 * of Hyndman and Fan, Am Stat 1996;50:361).
 *
 * @param count how many values, at least 1
 */
public record Spread(
    int count,
    double minimum,
    double lowerQuartile,
    double median,
    double upperQuartile,
    double maximum) {

  /**
   * The spread of values.
   *
   * @param values at least one
   */
  static Spread of(double[] values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("no values");
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new Spread(
        sorted.length,
        sorted[0],
        quantile(sorted, 0.25),
        quantile(sorted, 0.5),
        quantile(sorted, 0.75),
        sorted[sorted.length - 1]);
  }

  private static double quantile(double[] sorted, double share) {
    double place = share * (sorted.length - 1);
    int below = (int) place;
    double rest = place - below;
    return rest == 0 ? sorted[below] : (1 - rest) * sorted[below] + rest * sorted[below + 1];
  }
}
