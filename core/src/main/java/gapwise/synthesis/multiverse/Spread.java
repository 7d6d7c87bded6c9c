package gapwise.synthesis.multiverse;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

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

  /**
   * The spread of values of different weight. The i-th value of the ordered ones stands at the
   * share that the weights before it have in all weights but its own, so that the ends are at 0 and
   * 1 and equal weights give the same as no weights; straight lines between. Chosen here, no
   * source.
   *
   * @param values at least one
   * @param weights above 0, one a value
   */
  static Spread of(double[] values, double[] weights) {
    boolean alike = Arrays.stream(weights).allMatch(weight -> weight == weights[0]);
    if (values.length < 2 || alike) {
      return of(values);
    }
    Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
    double total = Arrays.stream(weights).sum();
    double[] sorted = new double[values.length];
    double[] places = new double[values.length];
    double before = 0;
    for (int i = 0; i < order.length; i++) {
      sorted[i] = values[order[i]];
      places[i] = before / (total - weights[order[i]]);
      before += weights[order[i]];
    }
    places[order.length - 1] = 1;
    return new Spread(
        sorted.length,
        sorted[0],
        at(0.25, places, sorted),
        at(0.5, places, sorted),
        at(0.75, places, sorted),
        sorted[sorted.length - 1]);
  }

  private static double at(double share, double[] places, double[] sorted) {
    int above = 1;
    while (places[above] < share) {
      above++;
    }
    double width = places[above] - places[above - 1];
    double rest = width > 0 ? (share - places[above - 1]) / width : 0;
    return (1 - rest) * sorted[above - 1] + rest * sorted[above];
  }

  private static double quantile(double[] sorted, double share) {
    double place = share * (sorted.length - 1);
    int below = (int) place;
    double rest = place - below;
    return rest == 0 ? sorted[below] : (1 - rest) * sorted[below] + rest * sorted[below + 1];
  }
}
