package gapwise.coverage;

import gapwise.effect.EmptyCells;
import gapwise.effect.Interval;
import gapwise.effect.Measure;
import gapwise.effect.MeasureOptions;
import gapwise.effect.Measures;
import gapwise.effect.StudyData;
import gapwise.effect.StudyEffect;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What several families pool by. */
final class Pools {
  private static final int QUADRATURE_POINTS = 25;

  /** The prior of a log ratio that plans have when they name none. */
  private static final CentrePrior LOG_RATIO = new CentrePrior.Normal(0, 2.82);

  private Pools() {}

  @SuppressWarnings("unchecked")
  static <D extends StudyData> Measure<D> measure(String name, String scale) {
    MeasureOptions options =
        new MeasureOptions(
            scale,
            EmptyCells.USUAL,
            OptionalDouble.empty(),
            List.of(),
            true,
            false,
            false,
            Way.LEVEL,
            OptionalDouble.empty(),
            MeasureOptions.Pooling.INVERSE_VARIANCE);
    return (Measure<D>) Measures.named(name, options).orElseThrow();
  }

  /** Effects and variances of the series that have them. */
  static <D extends StudyData> EffectSample sample(Measure<D> measure, List<D> series) {
    List<StudyEffect> effects =
        measure.effects(series).stream().filter(one -> one.leftOut().isEmpty()).toList();
    return EffectSample.of(
        effects.stream().mapToDouble(e -> e.estimate().orElseThrow()).toArray(),
        effects.stream().mapToDouble(e -> e.variance().orElseThrow()).toArray());
  }

  static <D extends StudyData> Pooled byEffects(
      Measure<D> measure, List<D> series, String interval, Prediction.Reference reference) {
    return InverseVariance.pool(
        sample(measure, series),
        new PoolingSettings(
            TauSquaredEstimators.named("restricted-maximum-likelihood"),
            MeanIntervals.named(interval).orElseThrow(),
            new Prediction(reference, Prediction.Error.SUM_OF_WEIGHTS),
            TauSquaredInterval.Q_PROFILE,
            Way.LEVEL));
  }

  /** By the exact likelihood of counts. */
  static Pooled exact(
      ExactLikelihood.Model model,
      List<? extends StudyData> series,
      boolean studentT,
      Prediction.Reference reference) {
    return new ExactLikelihood(model, QUADRATURE_POINTS)
        .pool(series, new LikelihoodLimits(Way.LEVEL, studentT, Optional.of(reference)));
  }

  /** Middle and one more centre on the analysis scale. */
  static Map<Target, Interval> middle(Pooled pooled) {
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    pooled.mean().ifPresent(mean -> found.put(Target.MIDDLE, mean.interval()));
    pooled.prediction().ifPresent(limits -> found.put(Target.FURTHER, limits));
    return found;
  }

  /** Of logarithms, with the limits of the middle carried to the average at the same tau. */
  static Map<Target, Interval> carried(Pooled pooled) {
    Map<Target, Interval> found = middle(pooled);
    double up = pooled.heterogeneity().tauSquared().orElse(0) / 2;
    pooled
        .mean()
        .ifPresent(
            mean ->
                found.put(
                    Target.AVERAGE,
                    new Interval(mean.interval().lower() + up, mean.interval().upper() + up)));
    return found;
  }

  /** Middle and one more centre by the posterior of log ratios given margins or all events. */
  static Map<Target, Interval> posterior(
      ExactLikelihood.Model model, List<? extends StudyData> series, double scale) {
    List<? extends StudyData> told = series.stream().filter(ExactLikelihood::tells).toList();
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    if (!told.isEmpty()) {
      CountsPosterior posterior =
          CountsPosterior.of(
                  MarginalLikelihood.of(model, told), LOG_RATIO, new TauPrior.HalfNormal(scale))
              .orElseThrow();
      found.put(Target.MIDDLE, posterior.centre().equalTailed(Way.LEVEL));
      found.put(Target.FURTHER, posterior.predictive().equalTailed(Way.LEVEL));
    }
    return found;
  }

  /**
   * Middle and one more centre by the posterior of effects with known variances and a flat mean,
   * and the average where effects are logarithms.
   */
  static Map<Target, Interval> posterior(
      EffectSample sample, double scale, boolean logarithms) {
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    Proper posterior = proper(sample, scale);
    found.put(Target.MIDDLE, posterior.mean().equalTailed(Way.LEVEL));
    if (logarithms) {
      found.put(Target.AVERAGE, posterior.logAverage().equalTailed(Way.LEVEL));
    }
    found.put(
        Target.FURTHER,
        posterior
            .predictive()
            .orElseGet(() -> ofOne(sample, scale).mean())
            .equalTailed(Way.LEVEL));
    return found;
  }

  /**
   * After one series a further one is normal about it with variance v + 2 tau^2, as the mean would
   * be if the scale of tau were root 2 larger.
   */
  private static Proper ofOne(EffectSample sample, double scale) {
    return proper(sample, Math.sqrt(2) * scale);
  }

  private static Proper proper(EffectSample sample, double scale) {
    return (Proper)
        Posterior.of(sample, new Priors(MeanPrior.FLAT, new TauPrior.HalfNormal(scale)));
  }
}
