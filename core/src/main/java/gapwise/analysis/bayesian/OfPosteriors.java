package gapwise.analysis.bayesian;

import gapwise.analysis.pooling.Pooler;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TrueEffect;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Subgroups;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Pools by the posterior: its median stands for the estimate, its standard deviation for the
 * standard error, its equal-tailed limits for the interval. Heterogeneity is what Q says; tau has
 * its own posterior. One study keeps its own result.
 */
record OfPosteriors(BayesianModel model, EffectSample sample, List<? extends StudyData> data)
    implements Pooler {
  @Override
  public int size() {
    return sample.size();
  }

  /** The posterior of studies at some places under a prior of tau. */
  Posterior posterior(List<Integer> places, AskedPrior tau) {
    return tau.of(places.stream().map(data::get).toList())
        .map(prior -> Posterior.of(sample.at(places), new Priors(model.mean(), prior)))
        .orElseGet(Posterior::outOfRange);
  }

  /**
   * Of the average over studies on the log scale; empty where the middle is the average, or a mean
   * would hang on which group comes first.
   */
  Optional<Marginal> averageOf(Proper posterior) {
    return model.ofLogarithms() ? Optional.of(posterior.logAverage()) : Optional.empty();
  }

  @Override
  public Pooled at(List<Integer> places) {
    PoolingSettings settings = model.settings();
    Pooled common = InverseVariance.pool(sample.at(places), settings.withCommonEffect());
    if (places.size() < 2 || common.mean().isEmpty()) {
      return common;
    }
    Posterior posterior = posterior(places, model.tau());
    if (posterior instanceof Posterior.None none) {
      return without(common, List.of(none.why()));
    }
    Proper proper = (Proper) posterior;
    Marginal mean = proper.mean();
    if (mean.sd().isEmpty()) {
      return without(common, proper.warnings());
    }
    Pooled pooled =
        new Pooled(
            Optional.of(
                new PooledMean(
                    mean.median(),
                    mean.sd().getAsDouble(),
                    mean.equalTailed(settings.level()),
                    OptionalDouble.empty(),
                    OptionalInt.empty(),
                    OptionalDouble.empty())),
            proper.predictive().map(further -> further.equalTailed(settings.level())),
            common.heterogeneity(),
            proper.studies().stream().map(TrueEffect::weight).toList(),
            mean.sd(),
            Optional.empty(),
            proper.warnings());
    return averageOf(proper).flatMap(this::shown).map(pooled::with).orElse(pooled);
  }

  /** Carried back; empty where a prior of tau that says next to nothing leaves it no number. */
  private Optional<Pooled.Average> shown(Marginal logarithm) {
    Interval limits = logarithm.equalTailed(model.settings().level());
    double upper = Math.exp(limits.upper());
    return Double.isFinite(upper)
        ? Optional.of(
            new Pooled.Average(
                Math.exp(logarithm.median()), new Interval(Math.exp(limits.lower()), upper)))
        : Optional.empty();
  }

  @Override
  public Optional<Further> further(List<Integer> places, Pooled pooled) {
    return places.size() > 1 && posterior(places, model.tau()) instanceof Proper proper
        ? proper.predictive().map(predictive -> predictive::below)
        : Optional.empty();
  }

  private static Pooled without(Pooled common, List<Problem> warnings) {
    return new Pooled(
        Optional.empty(),
        Optional.empty(),
        common.heterogeneity(),
        List.of(),
        OptionalDouble.empty(),
        Optional.empty(),
        warnings);
  }

  /** Groups have posteriors of their own; no test compares them. */
  @Override
  public Subgroups subgroups(List<String> levels, boolean common) {
    return Subgroups.untested(levels, this::at);
  }
}
