package gapwise.synthesis.regression;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.MeanModel;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.Predictive;
import gapwise.synthesis.pooling.WeightedMean;
import java.util.List;
import java.util.Optional;

/**
 * The mean that a regression expects at given values of the moderators, x'b with variance x'Vx.
 *
 * @param mean with its interval
 * @param prediction where the true effect of a further study with these values would lie; empty for
 *     a common effect or without degrees of freedom
 * @param distribution the distribution that the prediction cuts from; empty with it
 */
public record Predicted(
    PooledMean mean, Optional<Interval> prediction, Optional<Predictive> distribution) {
  /**
   * Predicts.
   *
   * @param fit of the regression
   * @param sample the studies it was fitted to
   * @param row a number for each term
   */
  public static Predicted at(
      Regression.Fit fit, EffectSample sample, RegressionSettings settings, double[] row) {
    double estimate = 0;
    for (int j = 0; j < row.length; j++) {
      estimate += row[j] * fit.coefficients().get(j).value().estimate();
    }
    boolean scaled = settings.test() == RegressionTest.HARTUNG_KNAPP;
    double level = settings.pooling().level();
    PooledMean mean =
        PooledMean.symmetric(
            estimate,
            Math.sqrt(quadratic(fit.covariance(), row)),
            scaled
                ? ReferenceDistribution.studentT(fit.residualDegreesOfFreedom())
                : ReferenceDistribution.normal(),
            level);
    if (settings.pooling().estimator().isEmpty()) {
      return new Predicted(mean, Optional.empty(), Optional.empty());
    }
    MeanModel model = LinearModel.of(fit.design());
    WeightedMean weighted =
        new WeightedMean(
            sample, model, estimate, 1 / quadratic(fit.modelCovariance(), row), fit.scale());
    Optional<Predictive> further =
        settings.pooling().prediction().distribution(weighted, fit.tauSquared());
    return new Predicted(mean, further.map(one -> one.interval(level)), further);
  }

  private static double quadratic(List<List<Double>> matrix, double[] row) {
    double sum = 0;
    for (int a = 0; a < row.length; a++) {
      for (int b = 0; b < row.length; b++) {
        sum += row[a] * matrix.get(a).get(b) * row[b];
      }
    }
    return Math.max(0, sum);
  }
}
