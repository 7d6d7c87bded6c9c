package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.synthesis.bayes.CentrePrior;
import gapwise.synthesis.bayes.CountsPosterior;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.likelihood.ExactLikelihood;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Function;

/**
 * What one more series of patients may expect, by the exact likelihood of shares with the spread as
 * estimated and as not known, and by the posterior; apart where the spread is estimated as 0.
 */
final class FurtherShares {
  private static final int[] SERIES = {3, 5, 10, 30};
  private static final double[] MEDIANS = {0.8, 0.9, 0.95};
  private static final double[] TAUS = {0, 0.5, 1};
  private static final double SCALE = 1;

  private FurtherShares() {}

  /**
   * One replicate, already told.
   *
   * @param further true share of one more series
   * @param zero whether the spread is estimated as 0
   */
  private record Told(
      double further,
      Optional<Interval> estimated,
      Optional<Interval> unknown,
      Optional<Interval> posterior,
      boolean zero)
      implements Drawn {
    @Override
    public double truth(Target target) {
      return further;
    }
  }

  static Family<?> family() {
    List<Way<Told>> ways = new ArrayList<>();
    for (boolean onlyZero : new boolean[] {false, true}) {
      String where = onlyZero ? AtZero.SUFFIX : "";
      ways.add(way("`t-k-minus-2`" + where, Told::estimated, onlyZero));
      ways.add(way("`unknown-spread`" + where, Told::unknown, onlyZero));
      ways.add(way("posterior, half-normal 1" + where, Told::posterior, onlyZero));
    }
    List<Scenario<Told>> scenarios = new ArrayList<>();
    for (int series : SERIES) {
      for (double median : MEDIANS) {
        for (double tau : TAUS) {
          scenarios.add(
              new Scenario<>(
                  series,
                  String.valueOf(median),
                  OptionalDouble.of(tau),
                  random -> draw(random, series, median, tau)));
        }
      }
    }
    return new Family<>(
        "further-shares", 1, Family.Size.POINTS, List.of(Target.FURTHER), ways, scenarios);
  }

  private static Way<Told> way(
      String words, Function<Told, Optional<Interval>> limits, boolean onlyZero) {
    return new Way<>(
        words,
        told ->
            limits
                .apply(told)
                .filter(found -> told.zero() || !onlyZero)
                .map(found -> Map.of(Target.FURTHER, found))
                .orElse(Map.of()));
  }

  private static Told draw(SplittableRandom random, int count, double median, double tau) {
    List<ArmCounts> series = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int patients = Draws.patients(random);
      double rate = share(logit(random, median, tau));
      int united = 0;
      for (int patient = 0; patient < patients; patient++) {
        united += random.nextDouble() < rate ? 1 : 0;
      }
      series.add(new ArmCounts(united, patients));
    }
    Pooled estimated = exact(series, Prediction.Reference.T_K_MINUS_2);
    return new Told(
        share(logit(random, median, tau)),
        estimated.prediction().map(FurtherShares::shares),
        exact(series, Prediction.Reference.UNKNOWN_SPREAD)
            .prediction()
            .map(FurtherShares::shares),
        CountsPosterior.of(
                MarginalLikelihood.of(ExactLikelihood.Model.PROPORTION, series),
                new CentrePrior.UniformShare(),
                new TauPrior.HalfNormal(SCALE))
            .map(found -> shares(found.predictive().equalTailed(Way.LEVEL))),
        estimated.heterogeneity().tauSquared().equals(OptionalDouble.of(0)));
  }

  private static Pooled exact(List<ArmCounts> series, Prediction.Reference reference) {
    return Pools.exact(ExactLikelihood.Model.PROPORTION, series, true, reference);
  }

  private static double logit(SplittableRandom random, double median, double tau) {
    return Math.log(median / (1 - median)) + tau * random.nextGaussian();
  }

  private static Interval shares(Interval logits) {
    return new Interval(share(logits.lower()), share(logits.upper()));
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
