package gapwise.synthesis.smallstudy;

import gapwise.numeric.ReferenceDistribution;
import gapwise.numeric.TermSum;
import java.util.Optional;

/**
 * A straight line by weighted least squares, y = intercept + slope x. Sums are taken about the
 * weighted means, so that a line far from 0 costs no digits.
 */
final class LeastSquaresLine {
  /** A spread of x, or of y about the line, below this share of its size, squared, is rounding. */
  private static final double ROUNDING = 1e-24;

  private final int count;
  private final double slope;
  private final double intercept;
  private final double weightSum;
  private final double meanX;
  private final double spread;
  private final double[] residuals;
  private final double residualSquares;

  LeastSquaresLine(double[] x, double[] y, double[] weights) {
    count = x.length;
    weightSum = TermSum.of(count, i -> weights[i]);
    meanX = TermSum.of(count, i -> weights[i] * x[i]) / weightSum;
    double meanY = TermSum.of(count, i -> weights[i] * y[i]) / weightSum;
    spread = TermSum.of(count, i -> weights[i] * (x[i] - meanX) * (x[i] - meanX));
    slope = TermSum.of(count, i -> weights[i] * (x[i] - meanX) * (y[i] - meanY)) / spread;
    intercept = meanY - slope * meanX;
    residuals = new double[count];
    for (int i = 0; i < count; i++) {
      residuals[i] = y[i] - meanY - slope * (x[i] - meanX);
    }
    double squares = TermSum.of(count, i -> weights[i] * residuals[i] * residuals[i]);
    double size = TermSum.of(count, i -> weights[i] * y[i] * y[i]);
    residualSquares = squares > ROUNDING * size ? squares : 0;
  }

  /** The line; empty if all x are equal or numbers are too far apart for one. */
  static Optional<LeastSquaresLine> of(double[] x, double[] y, double[] weights) {
    LeastSquaresLine line = new LeastSquaresLine(x, y, weights);
    boolean usable =
        line.spread > ROUNDING * line.weightSum * line.meanX * line.meanX
            && line.spread > 0
            && Double.isFinite(line.slope)
            && Double.isFinite(line.intercept)
            && Double.isFinite(line.residualSquares);
    return usable ? Optional.of(line) : Optional.empty();
  }

  double slope() {
    return slope;
  }

  double intercept() {
    return intercept;
  }

  /** y less the line at a place. */
  double residual(int place) {
    return residuals[place];
  }

  double weightSum() {
    return weightSum;
  }

  /** Weighted mean of x. */
  double meanX() {
    return meanX;
  }

  /** Weighted sum of squares of x about its mean. */
  double spread() {
    return spread;
  }

  private int degreesOfFreedom() {
    return count - 2;
  }

  private double scale() {
    return residualSquares / degreesOfFreedom();
  }

  /** What is told with the intercept tested; empty if all points lie on the line. */
  Optional<AsymmetryFinding> testingIntercept(String sentence) {
    return tested(
        intercept, Math.sqrt(scale() * (1 / weightSum + meanX * meanX / spread)), sentence);
  }

  /** What is told with the slope tested; empty if all points lie on the line. */
  Optional<AsymmetryFinding> testingSlope(String sentence) {
    return tested(slope, Math.sqrt(scale() / spread), sentence);
  }

  private Optional<AsymmetryFinding> tested(
      double coefficient, double standardError, String sentence) {
    double statistic = coefficient / standardError;
    if (!Double.isFinite(statistic) || !Double.isFinite(standardError)) {
      return Optional.empty();
    }
    double p = ReferenceDistribution.studentT(degreesOfFreedom()).twoSidedP(statistic);
    return Optional.of(
        new AsymmetryFinding.Line(
            intercept, slope, standardError, statistic, degreesOfFreedom(), p, sentence));
  }
}
