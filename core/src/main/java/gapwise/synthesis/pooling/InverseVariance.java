package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.GeneralisedQ;
import gapwise.synthesis.heterogeneity.GroupMeans;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.heterogeneity.MaximumLikelihood;
import gapwise.synthesis.heterogeneity.MeanModel;
import gapwise.synthesis.heterogeneity.NormalLikelihood;
import gapwise.synthesis.heterogeneity.RestrictedMaximumLikelihood;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Pools effects with weights 1/(v + tau squared). The door of this room. */
public final class InverseVariance {
  private static final Problem ZERO_VARIANCE =
      new Problem(
          "",
          "zero-variance",
          "a study's estimated variance is 0, so it would take all the weight and nothing is"
              + " pooled");

  private static final Problem OUT_OF_RANGE =
      new Problem(
          "",
          "number-out-of-range",
          "effects and their variances differ by more powers of ten than can be reckoned with, so"
              + " nothing is pooled; check the units of the data");

  private static final Problem NO_STUDIES =
      new Problem("", "no-studies", "no study is left to be pooled");

  private InverseVariance() {}

  /** Why a sample cannot be pooled, whatever the estimator; empty if it can. */
  public static Optional<Problem> obstacle(EffectSample sample) {
    if (sample.size() == 0) {
      return Optional.of(NO_STUDIES);
    }
    if (sample.hasZeroVariance()) {
      return Optional.of(ZERO_VARIANCE);
    }
    return sample.isWithinArithmetic() ? Optional.empty() : Optional.of(OUT_OF_RANGE);
  }

  /** Pools; never throws for a sample of any size. */
  public static Pooled pool(EffectSample sample, PoolingSettings settings) {
    Optional<Problem> obstacle = obstacle(sample);
    if (obstacle.isPresent()) {
      return Pooled.without(Heterogeneity.UNKNOWN, obstacle.get());
    }
    if (sample.size() == 1) {
      return single(sample, settings.level());
    }
    GroupMeans model = GroupMeans.one(sample);
    Heterogeneity fromQ = fromQ(sample, model);
    if (settings.estimator().isEmpty()) {
      return weighted(sample, model, new TauSquared.Estimate(0, true), settings, fromQ);
    }
    TauSquared tauSquared = settings.estimator().get().estimate(sample, model);
    if (tauSquared instanceof TauSquared.NotEstimable not) {
      return Pooled.without(fromQ, new Problem("", not.code(), not.reason()));
    }
    return weighted(sample, model, (TauSquared.Estimate) tauSquared, settings, fromQ);
  }

  private static Pooled single(EffectSample sample, double level) {
    double standardError = Math.sqrt(sample.variance(0));
    return new Pooled(
        Optional.of(
            PooledMean.symmetric(
                sample.effect(0), standardError, ReferenceDistribution.normal(), level)),
        Optional.empty(),
        Heterogeneity.OF_ONE_STUDY,
        List.of(1.0),
        OptionalDouble.of(standardError),
        Optional.empty(),
        List.of(new Problem("", "single-study", say("analysis.one-study-with-normal-interval"))));
  }

  /** Q and what follows from it alone. */
  static Heterogeneity fromQ(EffectSample sample, MeanModel model) {
    return Heterogeneity.fromQ(
        new GeneralisedQ(sample, model).at(0), sample.size() - model.parameters());
  }

  /** The typical variance within studies: (k - p)/tr P with weights 1/v. */
  static double typicalVariance(EffectSample sample, MeanModel model) {
    MeanModel.Fit fit = model.fit(sample, sample.weights(0));
    return (sample.size() - model.parameters()) / sample.sum(fit::projection);
  }

  private static Pooled weighted(
      EffectSample sample,
      GroupMeans model,
      TauSquared.Estimate tauSquared,
      PoolingSettings settings,
      Heterogeneity fromQ) {
    WeightedMean estimated = WeightedMean.of(sample, tauSquared.value());
    double weighting = settings.interval().weightingTauSquared(sample, tauSquared.value());
    WeightedMean mean =
        weighting == tauSquared.value() ? estimated : WeightedMean.of(sample, weighting);
    PooledMean pooled = settings.interval().around(mean, settings.level());
    Problems warnings = new Problems();
    settings
        .interval()
        .caution(estimated, settings.level())
        .ifPresent(one -> warnings.add("", one.code(), one.message()));
    if (pooled.standardError() == 0) {
      warnings.add("", "zero-width-interval", say("analysis.all-effects-equal"));
    }
    List<Double> shares = new ArrayList<>();
    for (double weight : sample.weights(weighting)) {
      shares.add(weight / mean.weightSum());
    }
    if (settings.estimator().isEmpty()) {
      return new Pooled(
          Optional.of(pooled),
          Optional.empty(),
          fromQ,
          shares,
          OptionalDouble.of(mean.standardError()),
          Optional.empty(),
          warnings.list());
    }
    Optional<Interval> prediction =
        settings.prediction().around(mean, tauSquared.value(), settings.level());
    warnOfRandomEffects(tauSquared, warnings);
    withoutWidth(pooled, prediction).ifPresent(one -> warnings.add("", one.code(), one.message()));
    if (prediction.isEmpty()) {
      Problem why = settings.prediction().missing(sample, model);
      warnings.add("", why.code(), why.message());
    }
    return new Pooled(
        Optional.of(pooled),
        prediction,
        fromQ.with(
            tauSquared.value(),
            typicalVariance(sample, model),
            Optional.of(settings.tauSquaredInterval().of(sample, model, settings.level()))),
        shares,
        OptionalDouble.of(mean.standardError()),
        likelihood(sample, model, settings.estimator().get(), tauSquared),
        warnings.list());
  }

  private static void warnOfRandomEffects(TauSquared.Estimate tauSquared, Problems warnings) {
    if (tauSquared.value() == 0) {
      warnings.add("", "between-study-variance-at-zero", say("analysis.variance-at-zero"));
    }
    if (!tauSquared.converged()) {
      warnings.add("", "did-not-converge", say("analysis.variance-did-not-settle"));
    }
  }

  /** That limits for a further study have no width, where those of the mean have one. */
  static Optional<Problem> withoutWidth(PooledMean mean, Optional<Interval> prediction) {
    return mean.standardError() > 0
        ? prediction
            .filter(limits -> !(limits.lower() < limits.upper()))
            .map(
                limits ->
                    new Problem(
                        "", "zero-width-interval", say("analysis.prediction-without-width")))
        : Optional.empty();
  }

  static Optional<Pooled.Likelihood> likelihood(
      EffectSample sample,
      MeanModel model,
      TauSquaredEstimator estimator,
      TauSquared.Estimate tauSquared) {
    boolean restricted = estimator instanceof RestrictedMaximumLikelihood;
    if (!restricted && !(estimator instanceof MaximumLikelihood)) {
      return Optional.empty();
    }
    return Optional.of(
        new Pooled.Likelihood(
            new NormalLikelihood(sample, model, restricted).at(tauSquared.value()),
            restricted,
            tauSquared.converged()));
  }
}
