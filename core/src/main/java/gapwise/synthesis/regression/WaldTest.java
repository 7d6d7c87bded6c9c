package gapwise.synthesis.regression;

import gapwise.numeric.CompensatedSum;
import gapwise.synthesis.pooling.EffectSample;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether some coefficients are all 0: b' V^-1 b for them, chi-squared on as many degrees of
 * freedom; with a residual scale its share for each of them over the scale, against F (Knapp and
 * Hartung, Stat Med 2003;22:2693). With fixed weights b' V^-1 b is the weighted square of the
 * distance between the fits with and without the terms, sum w (r0 - r)^2, which is how it is worked
 * out: no covariance of nearly collinear terms has to be inverted.
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
   * Tests.
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
    int count = tested.size();
    if (count == 0) {
      return Optional.empty();
    }
    Design design = model.design();
    LinearModel.LinearFit without = LinearModel.of(design.without(tested)).told(sample, weights);
    double square =
        CompensatedSum.over(
            sample.size(),
            i -> {
              double distance = without.residual(i) - fit.residual(i);
              return weights[i] * distance * distance;
            });
    double statistic = scale.isEmpty() ? square : square / count / scale.get();
    if (!(statistic < Double.MAX_VALUE)) {
      return Optional.empty();
    }
    if (scale.isEmpty()) {
      return Optional.of(
          new WaldTest(
              statistic,
              List.of(count),
              ChiSquaredDistribution.of(count).survivalProbability(statistic)));
    }
    int residual = design.rows() - design.columns();
    return Optional.of(
        new WaldTest(
            statistic,
            List.of(count, residual),
            FDistribution.of(count, residual).survivalProbability(statistic)));
  }
}
