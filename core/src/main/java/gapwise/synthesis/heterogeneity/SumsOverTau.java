package gapwise.synthesis.heterogeneity;

import gapwise.budget.Work;
import java.util.HashMap;
import java.util.Map;

/**
 * Weighted sums of a whole sample as functions of tau squared, at a cost that does not grow with
 * the number of studies once a stretch of tau squared has been visited.
 *
 * <p>Idea: with u = t + s, s the smallest variance, every weight is 1/(u + (v - s)), whose only
 * pole lies at u &lt;= 0; poles of the mean lie there too, being zeros of a sum of such terms. On a
 * stretch from a to 2a all these functions are therefore analytic inside the ellipse of parameter 3
 * + root 8 about it, and interpolation in n + 1 Chebyshev points errs by about (3 + root 8)^-n
 * (Trefethen, Approximation Theory and Approximation Practice, 2013, theorem 8.2): with 24 points
 * below rounding. Stretches are filled when first asked for, in one pass over the studies a point,
 * and there are at most as many as t has powers of two above s. Evaluation is barycentric (Berrut
 * and Trefethen, SIAM Rev 2004;46:501).
 */
final class SumsOverTau {
  private static final int POINTS = 24;

  private static final double[] PLACES = new double[POINTS];

  static {
    for (int j = 0; j < POINTS; j++) {
      PLACES[j] = 1.5 - 0.5 * Math.cos(Math.PI * j / (POINTS - 1));
    }
  }

  private final EffectSample sample;
  private final double smallest;
  private final Map<Integer, double[][]> stretches = new HashMap<>();

  SumsOverTau(EffectSample sample) {
    this.sample = sample;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < sample.size(); i++) {
      least = Math.min(least, sample.variance(i));
    }
    this.smallest = least;
  }

  /**
   * Sums at one tau squared, with w = 1/(v + t), m the weighted mean and r = y - m.
   *
   * @param weights sum of w
   * @param mean m
   * @param squares sum of w r^2
   * @param weightSquares sum of w^2
   * @param crossed sum of w^2 r
   * @param squaredSquares sum of w^2 r^2
   * @param logs sum of log(v + t)
   * @param weightCubes sum of w^3
   * @param crossedCubes sum of w^3 r
   * @param squaredCubes sum of w^3 r^2
   */
  record At(
      double weights,
      double mean,
      double squares,
      double weightSquares,
      double crossed,
      double squaredSquares,
      double logs,
      double weightCubes,
      double crossedCubes,
      double squaredCubes) {}

  /** The sums at a tau squared of at least 0. */
  At at(double tauSquared) {
    double times = (tauSquared + smallest) / smallest;
    int power = Math.getExponent(times);
    double place = Math.scalb(times, -power);
    double[][] values = stretches.computeIfAbsent(power, this::fill);
    double[] sums = new double[values[0].length];
    double total = 0;
    for (int j = 0; j < POINTS; j++) {
      double distance = place - PLACES[j];
      if (distance == 0) {
        return of(values[j]);
      }
      boolean end = j == 0 || j == POINTS - 1;
      double weight = (j % 2 == 0 ? 1 : -1) * (end ? 0.5 : 1) / distance;
      total += weight;
      for (int f = 0; f < sums.length; f++) {
        sums[f] += weight * values[j][f];
      }
    }
    for (int f = 0; f < sums.length; f++) {
      sums[f] /= total;
    }
    return of(sums);
  }

  private static At of(double[] sums) {
    return new At(
        sums[0], sums[1], sums[2], sums[3], sums[4], sums[5], sums[6], sums[7], sums[8], sums[9]);
  }

  private double[][] fill(int power) {
    double[][] values = new double[POINTS][];
    for (int j = 0; j < POINTS; j++) {
      // Not below 0, where rounding of the first point would put it.
      values[j] = exactly(Math.max(0, (Math.scalb(PLACES[j], power) - 1) * smallest));
    }
    return values;
  }

  private double[] exactly(double tauSquared) {
    Work.check();
    double[] weights = sample.weights(tauSquared);
    GroupMeans.GroupFit fit = GroupMeans.one(sample).fit(sample, weights);
    double squares = 0;
    double weightSquares = 0;
    double crossed = 0;
    double squaredSquares = 0;
    double logs = 0;
    double weightCubes = 0;
    double crossedCubes = 0;
    double squaredCubes = 0;
    for (int i = 0; i < weights.length; i++) {
      double weighted = weights[i] * fit.residual(i);
      squares += weighted * fit.residual(i);
      weightSquares += weights[i] * weights[i];
      crossed += weights[i] * weighted;
      squaredSquares += weighted * weighted;
      logs -= Math.log(weights[i]);
      weightCubes += weights[i] * weights[i] * weights[i];
      crossedCubes += weights[i] * weights[i] * weighted;
      squaredCubes += weights[i] * weighted * weighted;
    }
    return new double[] {
      fit.weightSum(0),
      fit.mean(0),
      squares,
      weightSquares,
      crossed,
      squaredSquares,
      logs,
      weightCubes,
      crossedCubes,
      squaredCubes
    };
  }
}
