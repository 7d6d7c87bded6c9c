package gapwise.synthesis.regression;

import java.util.Arrays;
import java.util.List;

/**
 * A curve that is cubic between knots, smooth at them, and straight before the first and after the
 * last, written as sums of its terms: x itself and, for k knots t, k - 2 further ones
 *
 * <p>(x-t_j)+^3 - (x-t_(k-1))+^3 (t_k-t_j)/(t_k-t_(k-1)) + (x-t_k)+^3 (t_(k-1)-t_j)/(t_k-t_(k-1)),
 *
 * <p>each over (t_k-t_1)^2, which gives all terms the unit of x (Durrleman and Simon, Stat Med
 * 1989;8:551; Harrell, Regression Modeling Strategies, 2nd edition 2015, section 2.4.5).
 *
 * @param knots three or more, each above the one before
 */
public record RestrictedCubicSpline(List<Double> knots) {
  public RestrictedCubicSpline {
    knots = List.copyOf(knots);
    if (knots.size() < 3) {
      throw new IllegalArgumentException("a spline needs three knots, had " + knots);
    }
    for (int i = 0; i < knots.size(); i++) {
      if (!Double.isFinite(knots.get(i)) || (i > 0 && !(knots.get(i) > knots.get(i - 1)))) {
        throw new IllegalArgumentException("knots must rise, were " + knots);
      }
    }
  }

  /**
   * Where the knots are put, as shares of the values below them, that keep enough data beyond the
   * outer ones: Harrell, as above, table 2.3.
   *
   * @param count 3, 4 or 5
   */
  public static List<Double> usualShares(int count) {
    return switch (count) {
      case 3 -> List.of(0.10, 0.50, 0.90);
      case 4 -> List.of(0.05, 0.35, 0.65, 0.95);
      case 5 -> List.of(0.05, 0.275, 0.50, 0.725, 0.95);
      default -> throw new IllegalArgumentException("no usual place for " + count + " knots");
    };
  }

  /**
   * Quantiles of values at the usual shares, interpolated between order statistics at 1 + (n-1)
   * share (definition 7 of Hyndman and Fan, Am Stat 1996;50:361). Some may be equal.
   *
   * @param values at least one
   */
  public static List<Double> usualKnots(List<Double> values, int count) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return usualShares(count).stream().map(share -> quantile(sorted, share)).toList();
  }

  private static double quantile(double[] sorted, double share) {
    double place = (sorted.length - 1) * share;
    int below = (int) Math.floor(place);
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  /** Number of terms: knots less one. */
  public int terms() {
    return knots.size() - 1;
  }

  /** The terms at a place; the first is the place itself. */
  public double[] at(double x) {
    double[] terms = new double[terms()];
    terms[0] = x;
    double last = knots.get(knots.size() - 1);
    double lastButOne = knots.get(knots.size() - 2);
    double unit = (last - knots.get(0)) * (last - knots.get(0));
    for (int j = 0; j < terms.length - 1; j++) {
      double knot = knots.get(j);
      terms[j + 1] =
          (cube(x - knot)
                  - cube(x - lastButOne) * (last - knot) / (last - lastButOne)
                  + cube(x - last) * (lastButOne - knot) / (last - lastButOne))
              / unit;
    }
    return terms;
  }

  private static double cube(double x) {
    return x > 0 ? x * x * x : 0;
  }

  @Override
  public String toString() {
    return "knots " + Arrays.toString(knots.toArray());
  }
}
