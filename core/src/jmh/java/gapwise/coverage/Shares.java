package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.effect.Measure;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.Marginal;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.likelihood.MeanOverStudies;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Prediction;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.DoubleUnaryOperator;

/** Union rates from series of patients, and the ways of making intervals for them, as shares. */
final class Shares {
  private Shares() {}

  static Family<DrawnShares> family() {
    return new Family<>(
        "shares",
        1,
        Family.Size.POINTS,
        List.of(Target.values()),
        List.of(
            new Way<>("logit, normal", logit("normal", Prediction.Reference.NORMAL)),
            new Way<>(
                "logit, Hartung-Knapp", logit("hartung-knapp", Prediction.Reference.T_K_MINUS_2)),
            new Way<>(
                "logit, Hartung-Knapp never narrower",
                logit("hartung-knapp-never-narrower", Prediction.Reference.T_K_MINUS_2)),
            new Way<>(
                "exact likelihood, normal",
                drawn -> exact(drawn.series(), false, Prediction.Reference.NORMAL)),
            new Way<>(
                "exact likelihood, Student's t",
                drawn -> exact(drawn.series(), true, Prediction.Reference.T_K_MINUS_2)),
            new Way<>(
                "posterior, half-normal 0.5", drawn -> posterior(drawn.series(), List.of(), 0.5)),
            new Way<>(
                "posterior, half-normal 0.75",
                drawn -> posterior(drawn.series(), List.of(), 0.75)),
            new Way<>(
                "posterior, half-normal 1", drawn -> posterior(drawn.series(), List.of(), 1)),
            new Way<>(
                "posterior, half-normal 1, tau shared with 3 methods",
                drawn -> posterior(drawn.series(), drawn.others(), 1))),
        ShareScenarios.all());
  }

  private static Map<Target, Interval> posterior(
      List<ArmCounts> series, List<List<ArmCounts>> others, double scale) {
    CountsPosterior posterior =
        CountsPosterior.of(
            likelihood(series),
            others.stream().map(Shares::likelihood).toList(),
            new CentrePrior.UniformShare(),
            new TauPrior.HalfNormal(scale))
            .orElseThrow();
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    found.put(
        Target.AVERAGE, shares(posterior.average(MeanOverStudies::logitOfProportion)));
    found.put(Target.MIDDLE, shares(posterior.centre()));
    found.put(Target.FURTHER, shares(posterior.predictive()));
    return found;
  }

  private static MarginalLikelihood likelihood(List<ArmCounts> series) {
    return MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, series);
  }

  private static Interval shares(Marginal logits) {
    Interval limits = logits.equalTailed(Way.LEVEL);
    return new Interval(share(limits.lower()), share(limits.upper()));
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }

  private static Map<Target, Interval> exact(
      List<ArmCounts> series, boolean studentT, Prediction.Reference reference) {
    return found(
        Pools.exact(ExactLikelihood.Model.PROPORTION, series, studentT, reference), Shares::share);
  }

  private static Function<DrawnShares, Map<Target, Interval>> logit(
      String interval, Prediction.Reference reference) {
    Measure<ArmCounts> measure = Pools.measure("proportion", "logit");
    return drawn ->
        found(
            Pools.byEffects(measure, drawn.series(), interval, reference),
            measure.shown(drawn.series())::apply);
  }

  /** The middle with its limits, and each limit carried to the average at the same spread. */
  private static Map<Target, Interval> found(Pooled pooled, DoubleUnaryOperator back) {
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    pooled
        .mean()
        .ifPresent(
            mean -> {
              Interval limits = mean.interval();
              double tau = Math.sqrt(pooled.heterogeneity().tauSquared().orElse(0));
              found.put(
                  Target.MIDDLE,
                  new Interval(
                      back.applyAsDouble(limits.lower()), back.applyAsDouble(limits.upper())));
              found.put(
                  Target.AVERAGE,
                  new Interval(
                      MeanOverStudies.proportion(limits.lower(), tau),
                      MeanOverStudies.proportion(limits.upper(), tau)));
            });
    pooled
        .prediction()
        .ifPresent(
            limits ->
                found.put(
                    Target.FURTHER,
                    new Interval(
                        back.applyAsDouble(limits.lower()), back.applyAsDouble(limits.upper()))));
    return found;
  }
}
