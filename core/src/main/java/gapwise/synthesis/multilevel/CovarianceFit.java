package gapwise.synthesis.multilevel;

import gapwise.budget.Work;
import java.util.Arrays;

/**
 * Generalised least squares with the covariance v + within on the diagonal and between for pairs of
 * rows of one cluster, and the likelihood of the two variances with its derivatives.
 *
 * <p>Nothing of the size rows times rows is made. With d = v + within and S the sum of 1/d over a
 * cluster, its covariance D + s 11' has determinant (1 + s S) prod d, and the rows (x - m + f m)
 * /root d, with m the mean of a cluster by weights 1/d and f = (1 + s S)^-1/2, are uncorrelated
 * with variance 1: Woodbury's formula taken apart so that nothing is lost when s is far above d.
 */
final class CovarianceFit {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final ClusteredRows rows;
  private final double between;
  private final double within;
  private final double[] precisions;
  private final double[] sums;
  private final TriangularFactor factor;
  private final double logDeterminant;
  private final double[][] design;

  CovarianceFit(ClusteredRows rows, double between, double within) {
    Work.check();
    this.rows = rows;
    this.between = between;
    this.within = within;
    this.precisions = new double[rows.size()];
    this.sums = new double[rows.clusters()];
    double log = 0;
    for (int c = 0; c < sums.length; c++) {
      for (int i = rows.start(c); i < rows.start(c + 1); i++) {
        double total = rows.variance(i) + within;
        precisions[i] = 1 / total;
        sums[c] += precisions[i];
        log += Math.log(total);
      }
      log += Math.log1p(between * sums[c]);
    }
    logDeterminant = log;
    double[][] whitened = new double[rows.parameters() + 1][];
    for (int j = 0; j < whitened.length; j++) {
      whitened[j] = shrunken(rows.column(j), 0.5);
      for (int i = 0; i < precisions.length; i++) {
        whitened[j][i] *= Math.sqrt(precisions[i]);
      }
    }
    factor = new TriangularFactor(whitened);
    design = new double[rows.parameters()][];
  }

  /** Each value with the mean of its cluster multiplied by (1 + s S)^-power. */
  private double[] shrunken(double[] values, double power) {
    double[] shrunken = new double[values.length];
    for (int c = 0; c < sums.length; c++) {
      double mean = 0;
      for (int i = rows.start(c); i < rows.start(c + 1); i++) {
        mean += precisions[i] / sums[c] * values[i];
      }
      double kept = 1 / (1 + between * sums[c]);
      double left = mean * (power == 1 ? kept : Math.sqrt(kept));
      for (int i = rows.start(c); i < rows.start(c + 1); i++) {
        shrunken[i] = values[i] - mean + left;
      }
    }
    return shrunken;
  }

  /** The inverse covariance times a vector. */
  private double[] inverseTimes(double[] values) {
    double[] product = shrunken(values, 1);
    for (int i = 0; i < product.length; i++) {
      product[i] *= precisions[i];
    }
    return product;
  }

  TriangularFactor factor() {
    return factor;
  }

  double between() {
    return between;
  }

  double within() {
    return within;
  }

  /** Residuals by the inverse covariance: their sum of squares. */
  double residualSquares() {
    return factor.residualSquares();
  }

  /** Log likelihood with all constants but log det(X'X)/2 of the design without weights. */
  double logLikelihood(boolean restricted) {
    int terms = rows.size() - (restricted ? rows.parameters() : 0);
    double twice = terms * LOG_TWO_PI + logDeterminant + factor.residualSquares();
    return -(restricted ? twice + factor.logDeterminant() : twice) / 2;
  }

  /** The inverse covariance times the residuals. */
  double[] weightedResiduals() {
    double[] residuals = rows.column(rows.parameters()).clone();
    for (int j = 0; j < rows.parameters(); j++) {
      double[] column = rows.column(j);
      double coefficient = factor.coefficient(j);
      for (int i = 0; i < residuals.length; i++) {
        residuals[i] -= coefficient * column[i];
      }
    }
    return inverseTimes(residuals);
  }

  /** The columns of the design, each multiplied by the inverse covariance; not to be changed. */
  double[][] weightedDesign() {
    for (int j = 0; j < design.length; j++) {
      if (design[j] == null) {
        design[j] = inverseTimes(rows.column(j));
      }
    }
    return design;
  }

  /** Sums over clusters. */
  double[] clusterSums(double[] values) {
    double[] totals = new double[sums.length];
    for (int c = 0; c < totals.length; c++) {
      for (int i = rows.start(c); i < rows.start(c + 1); i++) {
        totals[c] += values[i];
      }
    }
    return totals;
  }

  /**
   * tr P and tr(P J), where J has ones for pairs of one cluster and P is the inverse covariance
   * (with {@code restricted} less its part in the span of the design).
   */
  double[] traces(boolean restricted) {
    double[] traces = {0, 0};
    for (int c = 0; c < sums.length; c++) {
      double after = 0;
      double[] others = new double[rows.start(c + 1) - rows.start(c)];
      for (int i = rows.start(c + 1) - 1; i >= rows.start(c); i--) {
        others[i - rows.start(c)] = after;
        after += precisions[i];
      }
      double before = 0;
      double spread = 1 + between * sums[c];
      for (int i = rows.start(c); i < rows.start(c + 1); i++) {
        double rest = before + others[i - rows.start(c)];
        traces[0] += precisions[i] * ((1 + between * rest) / spread);
        before += precisions[i];
      }
      traces[1] += sums[c] / spread;
    }
    if (restricted) {
      double[][] totals =
          Arrays.stream(weightedDesign()).map(this::clusterSums).toArray(double[][]::new);
      traces[0] -= inSpan(design, rows.size());
      traces[1] -= inSpan(totals, sums.length);
    }
    return traces;
  }

  private double inSpan(double[][] vectors, int count) {
    double sum = 0;
    double[] one = new double[vectors.length];
    for (int i = 0; i < count; i++) {
      for (int j = 0; j < one.length; j++) {
        one[j] = vectors[j][i];
      }
      sum += factor.quadratic(one);
    }
    return sum;
  }

  /** Derivatives of the log likelihood by the variance within and the one between. */
  Slope slope(boolean restricted) {
    double[] residuals = weightedResiduals();
    double[] totals = clusterSums(residuals);
    double[] traces = traces(restricted);
    return new Slope(
        (dot(residuals, residuals) - traces[0]) / 2, (dot(totals, totals) - traces[1]) / 2);
  }

  /**
   * The average of the observed and expected second derivatives by the two variances, with opposite
   * sign: Gilmour, Thompson and Cullis, Biometrics 1995;51:1440.
   */
  Curvature curvature() {
    double[] residuals = weightedResiduals();
    double[] totals = clusterSums(residuals);
    double[] spread = new double[residuals.length];
    for (int c = 0; c < totals.length; c++) {
      Arrays.fill(spread, rows.start(c), rows.start(c + 1), totals[c]);
    }
    double[] projected = projected(residuals);
    return new Curvature(
        dot(residuals, projected) / 2,
        dot(spread, projected) / 2,
        dot(spread, projected(spread)) / 2);
  }

  private double[] projected(double[] values) {
    double[] inner = new double[weightedDesign().length];
    for (int j = 0; j < inner.length; j++) {
      inner[j] = dot(design[j], values);
    }
    double[] times = factor.solve(inner);
    double[] projected = inverseTimes(values);
    for (int j = 0; j < inner.length; j++) {
      for (int i = 0; i < projected.length; i++) {
        projected[i] -= design[j][i] * times[j];
      }
    }
    return projected;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** First derivatives. */
  record Slope(double byWithin, double byBetween) {}

  /** Second derivatives with opposite sign. */
  record Curvature(double withinWithin, double withinBetween, double betweenBetween) {}
}
