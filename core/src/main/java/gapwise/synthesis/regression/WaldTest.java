package gapwise.synthesis.regression;

import gapwise.numeric.LeastSquares;
import gapwise.numeric.TermSum;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether some coefficients are all 0: b' V^-1 b for them, chi-squared on as many degrees of
 * freedom; with a residual scale its share for each of them over the scale, against F (Knapp and
 * Hartung, Stat Med 2003;22:2693).
 *
 * @param statistic chi-squared, or F
 * @param degreesOfFreedom one number, or two for F
 * @param pValue upper tail
 */
public record WaldTest(double statistic, List<Integer> degreesOfFreedom, double pValue) {
  public WaldTest {
    degreesOfFreedom = List.copyOf(degreesOfFreedom);
  }

  /**
   * Tests by the covariance of the coefficients, for fits whose weights know more than one study at
   * a time.
   *
   * @param estimates all coefficients
   * @param covariance of all coefficients
   * @param which places of the ones tested; without any there is no test
   * @param residual degrees of freedom of the variance, for F
   * @return empty if the covariance is 0 or cannot be inverted
   */
  public static Optional<WaldTest> of(
      double[] estimates, double[][] covariance, List<Integer> which, OptionalInt residual) {
    int count = which.size();
    if (count == 0) {
      return Optional.empty();
    }
    double[] rows = new double[count * count];
    double[] tested = new double[count];
    double[] ones = new double[count];
    Arrays.fill(ones, 1);
    for (int a = 0; a < count; a++) {
      tested[a] = estimates[which.get(a)];
      for (int b = 0; b < count; b++) {
        rows[a * count + b] = covariance[which.get(a)][which.get(b)];
      }
    }
    LeastSquares inverse = LeastSquares.of(rows, count, ones);
    if (!inverse.isFullRank()) {
      return Optional.empty();
    }
    LeastSquares.Solution solved = inverse.solve(tested);
    double square = TermSum.of(count, a -> tested[a] * solved.coefficient(a));
    return of(residual.isPresent() ? square / count : square, count, residual);
  }

  /**
   * Tests by the weighted square of the distance between the fits with and without the terms, sum w
   * (r0 - r)^2, which for fixed weights of single studies is the same number: no covariance of
   * nearly collinear terms has to be inverted.
   *
   * @param fit with all terms
   * @param weights it was fitted with
   * @param scale residual scale with k - p degrees of freedom; empty for none
   * @param tested some of the terms, but not all
   * @return empty without terms to test, or where the scale is 0
   */
  static Optional<WaldTest> of(
      EffectSample sample,
      LinearModel model,
      LinearModel.LinearFit fit,
      double[] weights,
      Optional<Double> scale,
      List<String> tested) {
    if (tested.isEmpty()) {
      return Optional.empty();
    }
    DesignMatrix design = model.design();
    LinearModel.LinearFit without = LinearModel.of(design.without(tested)).told(sample, weights);
    double square =
        TermSum.of(
            sample.size(),
            i -> {
              double distance = without.residual(i) - fit.residual(i);
              return weights[i] * distance * distance;
            });
    int count = tested.size();
    return scale.isEmpty()
        ? of(square, count, OptionalInt.empty())
        : of(square / count / scale.get(), count, OptionalInt.of(design.rows() - design.columns()));
  }

  private static Optional<WaldTest> of(double statistic, int count, OptionalInt residual) {
    if (!(statistic >= 0 && statistic < Double.MAX_VALUE)) {
      return Optional.empty();
    }
    if (residual.isEmpty()) {
      return Optional.of(
          new WaldTest(
              statistic,
              List.of(count),
              ChiSquaredDistribution.of(count).survivalProbability(statistic)));
    }
    return Optional.of(
        new WaldTest(
            statistic,
            List.of(count, residual.getAsInt()),
            FDistribution.of(count, residual.getAsInt()).survivalProbability(statistic)));
  }
}
