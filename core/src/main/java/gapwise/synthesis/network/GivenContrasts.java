package gapwise.synthesis.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * A study given by its contrasts. The variances of all contrasts determine their covariances: with
 * a the first treatment, cov(b - a, c - a) is (var(b - a) + var(c - a) - var(c - b))/2, whose value
 * for independent arms is the variance of arm a (Rücker, Res Synth Methods 2012;3:312). The effects
 * must add up along any way from one treatment to another; what rounding in a report left is spread
 * evenly over the contrasts.
 */
public final class GivenContrasts {
  /**
   * Effects may miss each other around three treatments by this share of the largest standard error
   * among them, as reports round. Common practice, no source.
   */
  private static final double ROUNDING = 0.1;

  private GivenContrasts() {}

  /**
   * One contrast.
   *
   * @param effect the first treatment less the second
   * @param variance at least 0
   */
  public record Contrast(String first, String second, double effect, double variance) {}

  /** What came of the contrasts of a study. */
  public sealed interface Read permits Study, Wrong {}

  /** They are those of one study. */
  public record Study(NetworkStudy study) implements Read {}

  /** They cannot be; for people. */
  public record Wrong(String code, String message) implements Read {}

  /** Reads the contrasts of one study of different treatments. */
  public static Read read(String label, List<Contrast> contrasts) {
    TreeSet<String> names = new TreeSet<>();
    for (Contrast contrast : contrasts) {
      names.add(contrast.first());
      names.add(contrast.second());
    }
    List<String> treatments = List.copyOf(names);
    Map<List<String>, Contrast> byPair = new HashMap<>();
    for (Contrast one : contrasts) {
      if (byPair.put(List.of(one.first(), one.second()), one) != null) {
        return new Wrong(
            "contrast-twice",
            one.first()
                + " against "
                + one.second()
                + " stands in more than one row of the study, expected one; remove the other, or"
                + " give the studies labels of their own");
      }
      byPair.put(
          List.of(one.second(), one.first()),
          new Contrast(one.second(), one.first(), -one.effect(), one.variance()));
    }
    return full(label, treatments, byPair);
  }

  private static Read full(
      String label, List<String> treatments, Map<List<String>, Contrast> byPair) {
    int size = treatments.size();
    double[][] effects = new double[size][size];
    double[][] variances = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        if (i == j) {
          continue;
        }
        Contrast contrast = byPair.get(List.of(treatments.get(i), treatments.get(j)));
        if (contrast == null) {
          return new Wrong(
              "contrast-missing",
              "the study has "
                  + size
                  + " treatments, so all "
                  + size * (size - 1) / 2
                  + " contrasts are needed, and "
                  + treatments.get(Math.min(i, j))
                  + " against "
                  + treatments.get(Math.max(i, j))
                  + " is not given; add it, or give arms instead");
        }
        effects[i][j] = contrast.effect();
        variances[i][j] = contrast.variance();
      }
    }
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < i; j++) {
        for (int k = 0; k < j; k++) {
          double round = effects[i][j] + effects[j][k] + effects[k][i];
          double largest = Math.max(variances[i][j], Math.max(variances[j][k], variances[k][i]));
          if (Math.abs(round) > ROUNDING * Math.sqrt(largest)) {
            return new Wrong(
                "inconsistent-contrasts",
                "the effects among "
                    + List.of(treatments.get(k), treatments.get(j), treatments.get(i))
                    + " do not add up: going round they come to "
                    + (Float.isFinite((float) round) ? "" + (float) round : "more than 1e38")
                    + " instead of 0; correct a value or the order of its treatments");
          }
        }
      }
    }
    return study(label, treatments, effects, variances);
  }

  private static Read study(
      String label, List<String> treatments, double[][] effects, double[][] variances) {
    int m = treatments.size() - 1;
    List<Double> against = new ArrayList<>();
    List<List<Double>> covariance = new ArrayList<>();
    double[][] matrix = new double[m][m];
    for (int i = 0; i < m; i++) {
      against.add(value(effects, i + 1) - value(effects, 0));
      List<Double> row = new ArrayList<>();
      for (int j = 0; j < m; j++) {
        matrix[i][j] =
            i == j
                ? variances[i + 1][0]
                : (variances[i + 1][0] + variances[j + 1][0] - variances[i + 1][j + 1]) / 2;
        row.add(matrix[i][j]);
      }
      covariance.add(row);
    }
    if (m > 1 && !isPossible(matrix)) {
      return new Wrong(
          "inconsistent-contrasts",
          "the standard errors of its contrasts cannot be those of one study: no covariance of its"
              + " arms gives them all; correct them, or give arms instead");
    }
    return new Study(new NetworkStudy(label, treatments, against, covariance));
  }

  /** Least squares on contrasts of equal weight: the mean difference from all treatments. */
  private static double value(double[][] effects, int treatment) {
    double sum = 0;
    for (double effect : effects[treatment]) {
      sum += effect;
    }
    return sum / effects.length;
  }

  private static boolean isPossible(double[][] matrix) {
    double smallest = Double.POSITIVE_INFINITY;
    for (double value :
        new EigenDecomposition(new Array2DRowRealMatrix(matrix)).getRealEigenvalues()) {
      smallest = Math.min(smallest, value);
    }
    return smallest > 0;
  }
}
