package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GeneralisedQ;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.heterogeneity.MeanModel;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What any model for the means leaves of the differences between studies: Q, the variance between
 * studies and what follows from it, with traces of P for the sums of the model with one mean
 * (Raudenbush 1994; Thompson and Sharp, Stat Med 1999;18:2693).
 *
 * @param estimate the variance between studies, 0 for a common effect; empty if it cannot be had
 * @param heterogeneity residual
 * @param likelihood for the likelihood estimators
 * @param scale weighted mean square of the residuals over k - p, the factor of Hartung and Knapp; 0
 *     without an estimate
 * @param warnings what a reader must know
 */
public record ResidualVariance(
    Optional<TauSquared.Estimate> estimate,
    Heterogeneity heterogeneity,
    Optional<Pooled.Likelihood> likelihood,
    double scale,
    List<Problem> warnings) {
  /** Residuals below this share of the effects, squared, are rounding. */
  private static final double ROUNDING = 1e-24;

  public ResidualVariance {
    warnings = List.copyOf(warnings);
  }

  /**
   * Estimates.
   *
   * @param sample more studies than the model has means, no variance 0, within arithmetic
   */
  public static ResidualVariance of(
      EffectSample sample, MeanModel model, PoolingSettings settings) {
    Heterogeneity fromQ = InverseVariance.fromQ(sample, model);
    if (settings.estimator().isEmpty()) {
      return new ResidualVariance(
          Optional.of(new TauSquared.Estimate(0, true)),
          fromQ,
          Optional.empty(),
          scale(sample, model, 0),
          List.of());
    }
    TauSquaredEstimator estimator = settings.estimator().get();
    TauSquared found = estimator.estimate(sample, model);
    if (found instanceof TauSquared.NotEstimable not) {
      return new ResidualVariance(
          Optional.empty(),
          fromQ,
          Optional.empty(),
          0,
          List.of(new Problem("", not.code(), not.reason())));
    }
    TauSquared.Estimate estimate = (TauSquared.Estimate) found;
    Interval interval = settings.tauSquaredInterval().of(sample, model, settings.level());
    return new ResidualVariance(
        Optional.of(estimate),
        fromQ.with(
            estimate.value(),
            InverseVariance.typicalVariance(sample, model),
            Optional.of(interval)),
        InverseVariance.likelihood(sample, model, estimator, estimate),
        scale(sample, model, estimate.value()),
        warnings(estimate));
  }

  /** The weighted mean square of the residuals at a tau squared; 0 where they are rounding. */
  public static double scale(EffectSample sample, MeanModel model, double tauSquared) {
    double squares = new GeneralisedQ(sample, model).at(tauSquared);
    double[] weights = sample.weights(tauSquared);
    double size = sample.sum(i -> weights[i] * sample.effect(i) * sample.effect(i));
    return squares > ROUNDING * size ? squares / (sample.size() - model.parameters()) : 0;
  }

  private static List<Problem> warnings(TauSquared.Estimate estimate) {
    List<Problem> warnings = new ArrayList<>();
    if (estimate.value() == 0) {
      warnings.add(
          new Problem(
              "", "between-study-variance-at-zero", say("analysis.residual-variance-at-zero")));
    }
    if (!estimate.converged()) {
      warnings.add(
          new Problem("", "did-not-converge", say("analysis.residual-variance-did-not-settle")));
    }
    return warnings;
  }
}
