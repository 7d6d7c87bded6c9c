package gapwise.synthesis.regression;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.pooling.PooledMean;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One sum of coefficients c'b of a regression, without all else that a regression tells: a
 * coefficient, the mean at given values, the difference of two of these. For the many fits of a
 * multiverse.
 */
public sealed interface SumOfTerms {
  /** The sum with its limits and its test against 0. */
  record Told(PooledMean value) implements SumOfTerms {}

  /**
   * There is no such sum.
   *
   * @param code why, a kebab-case word
   */
  record NotTold(String code) implements SumOfTerms {}

  /**
   * By the test of the settings.
   *
   * @param sum a factor for each term of the design
   */
  static SumOfTerms of(
      EffectSample sample, DesignMatrix design, RegressionSettings settings, double[] sum) {
    Optional<Regression.Fit> fit = Optional.empty();
    Optional<Problem> not = Obstacles.of(sample, design);
    if (not.isEmpty()) {
      fit = Regression.estimate(sample, design, settings);
    }
    return fit.isPresent()
        ? new Told(Predicted.at(fit.get(), sample, settings, sum).mean())
        : new NotTold(not.map(Problem::code).orElseGet(() -> noVariance(sample, design, settings)));
  }

  /**
   * By a robust variance. Its degrees of freedom are those of this sum, so that the design is
   * turned until the sum is one of its coefficients.
   *
   * @param sum a factor for each term of the design, not all 0
   * @param clusters the cluster of each study
   */
  static SumOfTerms robust(
      EffectSample sample,
      DesignMatrix design,
      RegressionSettings settings,
      double[] sum,
      List<String> clusters,
      RobustVariance.Correction correction) {
    Optional<Problem> not = Obstacles.of(sample, design);
    if (not.isPresent()) {
      return new NotTold(not.get().code());
    }
    int column = weightiest(design, sum);
    DesignMatrix turned = design.turned(sum, column);
    Optional<Regression.Fit> fit = Regression.estimate(sample, turned, settings);
    if (fit.isEmpty()) {
      return new NotTold(noVariance(sample, design, settings));
    }
    RobustVariance robust =
        RobustVariance.of(
            ClusteredFit.of(fit.get(), clusters), correction, settings.pooling().level());
    String term = design.terms().get(column);
    return robust.coefficients().stream()
        .filter(one -> one.term().equals(term))
        .findFirst()
        .<SumOfTerms>map(one -> new Told(mean(one)))
        .orElseGet(() -> new NotTold(why(robust, term)));
  }

  /** The column that gives most to the sum, in the unit of its own length. */
  private static int weightiest(DesignMatrix design, double[] sum) {
    int best = -1;
    double most = 0;
    for (int j = 0; j < sum.length; j++) {
      double squares = 0;
      for (int i = 0; i < design.rows(); i++) {
        squares += design.value(i, j) * design.value(i, j);
      }
      double share = Math.abs(sum[j]) / Math.sqrt(squares);
      if (sum[j] != 0 && (best < 0 || share > most)) {
        best = j;
        most = share;
      }
    }
    if (best < 0) {
      throw new IllegalArgumentException("a sum of nothing");
    }
    return best;
  }

  private static PooledMean mean(RobustCoefficient one) {
    return new PooledMean(
        one.estimate(),
        one.standardError(),
        one.interval(),
        OptionalDouble.of(one.statistic()),
        OptionalInt.empty(),
        OptionalDouble.of(one.pValue()));
  }

  /** The reason that names the term; else the first of all. */
  private static String why(RobustVariance robust, String term) {
    return robust.warnings().stream()
        .filter(one -> one.message().contains("'" + term + "'"))
        .findFirst()
        .or(() -> robust.warnings().stream().findFirst())
        .map(Problem::code)
        .orElse("zero-width-interval");
  }

  private static String noVariance(
      EffectSample sample, DesignMatrix design, RegressionSettings settings) {
    return settings
                .pooling()
                .estimator()
                .map(one -> one.estimate(sample, LinearModel.of(design)))
                .orElse(new TauSquared.Estimate(0, true))
            instanceof TauSquared.NotEstimable none
        ? none.code()
        : "did-not-converge";
  }
}
