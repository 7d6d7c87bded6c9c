package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.synthesis.likelihood.BetaBinomial;
import gapwise.synthesis.likelihood.LikelihoodLimits;
import gapwise.synthesis.pooling.Pooled;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.apache.commons.statistics.distribution.BetaDistribution;

/** Limits by the beta-binomial likelihood, in worlds of its own kind and of normal logits. */
final class BetaBinomialShares {
  private static final double[] MEANS = {0.5, 0.8, 0.9, 0.95, 0.98};

  /** Intraclass correlations: none, and about those of normal logits with tau 0.5 and 1. */
  private static final double[] CORRELATIONS = {0, 0.05, 0.15};

  private BetaBinomialShares() {}

  /** Worlds whose true rates have a beta distribution; their spread is the correlation. */
  static Family<DrawnBetaShares> ofTheirOwn() {
    List<Scenario<DrawnBetaShares>> scenarios = new ArrayList<>();
    for (int series : Draws.SERIES) {
      for (double mean : MEANS) {
        for (double correlation : CORRELATIONS) {
          scenarios.add(
              new Scenario<>(
                  series,
                  String.valueOf(mean),
                  OptionalDouble.of(correlation),
                  random -> draw(random, series, mean, correlation)));
        }
      }
    }
    return family("beta-shares", DrawnBetaShares::series, scenarios);
  }

  /** The worlds of {@link Shares}. */
  static Family<DrawnShares> ofNormalLogits() {
    return family("shares-by-beta-binomial", DrawnShares::series, ShareScenarios.all());
  }

  private static <D extends Drawn> Family<D> family(
      String name, Function<D, List<ArmCounts>> series, List<Scenario<D>> scenarios) {
    return new Family<>(
        name,
        5,
        Family.Size.POINTS,
        List.of(Target.AVERAGE, Target.FURTHER),
        List.of(
            new Way<>("beta-binomial, normal", drawn -> limits(series.apply(drawn), false)),
            new Way<>("beta-binomial, Student's t", drawn -> limits(series.apply(drawn), true))),
        scenarios);
  }

  private static DrawnBetaShares draw(
      SplittableRandom random, int count, double mean, double correlation) {
    List<ArmCounts> series = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int patients = Draws.patients(random);
      double rate = rate(random, mean, correlation);
      int united = 0;
      for (int patient = 0; patient < patients; patient++) {
        united += random.nextDouble() < rate ? 1 : 0;
      }
      series.add(new ArmCounts(united, patients));
    }
    return new DrawnBetaShares(mean, series, rate(random, mean, correlation));
  }

  private static double rate(SplittableRandom random, double mean, double correlation) {
    if (correlation == 0) {
      return mean;
    }
    double both = (1 - correlation) / correlation;
    return BetaDistribution.of(mean * both, (1 - mean) * both)
        .inverseCumulativeProbability(random.nextDouble());
  }

  private static Map<Target, Interval> limits(List<ArmCounts> series, boolean studentT) {
    Pooled pooled =
        BetaBinomial.pool(
            series, new LikelihoodLimits(Way.LEVEL, studentT, Optional.empty()), true);
    Map<Target, Interval> found = new EnumMap<>(Target.class);
    pooled.mean().ifPresent(mean -> found.put(Target.AVERAGE, shares(mean.interval())));
    pooled.prediction().ifPresent(further -> found.put(Target.FURTHER, shares(further)));
    return found;
  }

  private static Interval shares(Interval logits) {
    return new Interval(share(logits.lower()), share(logits.upper()));
  }

  private static double share(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
