package gapwise.coverage;

import gapwise.effect.Interval;
import gapwise.synthesis.bayes.MeanPrior;
import gapwise.synthesis.bayes.Posterior;
import gapwise.synthesis.bayes.Priors;
import gapwise.synthesis.bayes.Proper;
import gapwise.synthesis.bayes.TauPrior;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.multilevel.ClusterLimits;
import gapwise.synthesis.multilevel.FurtherCluster;
import gapwise.synthesis.multilevel.ThreeLevelPooling;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkPredictions.Spread;
import gapwise.synthesis.network.NetworkSettings;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.BiFunction;

/**
 * What a further study may expect, with the spread as estimated and as not known: single effects,
 * networks and three levels. Effects are log ratios with known standard errors of 0.2 to 0.6; the
 * limits of replicates whose spread is estimated as 0 are told apart, and how many these are.
 */
final class FurtherStudies {
  private static final String ESTIMATED = "t on k - 2, spread as estimated";
  private static final String UNKNOWN = "spread not known";
  private static final double[] TAUS = {0, 0.2, 0.5};
  private static final List<String> TREATMENTS = List.of("A", "B", "C");
  private static final int MOST_ROWS_OF_A_TEAM = 4;

  private FurtherStudies() {}

  /**
   * One replicate, already told.
   *
   * @param further true value of a further study
   * @param zero whether its spread is estimated as 0
   */
  private record Told(
      double further, Optional<Interval> estimated, Optional<Interval> unknown, boolean zero)
      implements Drawn {
    @Override
    public double truth(Target target) {
      return further;
    }

    private Map<Target, Interval> limits(boolean known, boolean onlyZero) {
      Optional<Interval> limits = known ? estimated : unknown;
      return limits.isEmpty() || (onlyZero && !zero)
          ? Map.of()
          : Map.of(Target.FURTHER, limits.get());
    }
  }

  /** Single effects. */
  static Family<?> ofEffects() {
    return family("further-effects", new int[] {3, 5, 10, 30}, FurtherStudies::effects);
  }

  /** Networks of three treatments. */
  static Family<?> ofNetworks() {
    return family("further-networks", new int[] {5, 8, 15, 30}, FurtherStudies::network);
  }

  /** Teams of one to four rows. */
  static Family<?> ofTeams() {
    return family("further-teams", new int[] {3, 5, 10, 20}, FurtherStudies::teams);
  }

  /** A way of drawing and telling so many studies. */
  private interface Draw {
    Told of(SplittableRandom random, int studies, double tau);
  }

  private static Family<Told> family(String name, int[] sizes, Draw draw) {
    List<Way<Told>> ways = new ArrayList<>();
    for (boolean onlyZero : new boolean[] {false, true}) {
      String where = onlyZero ? AtZero.SUFFIX : "";
      ways.add(new Way<>(ESTIMATED + where, told -> told.limits(true, onlyZero)));
      ways.add(new Way<>(UNKNOWN + where, told -> told.limits(false, onlyZero)));
    }
    List<Scenario<Told>> scenarios = new ArrayList<>();
    for (int size : sizes) {
      for (double tau : TAUS) {
        scenarios.add(
            new Scenario<>(
                size, "log ratios", OptionalDouble.of(tau), random -> draw.of(random, size, tau)));
      }
    }
    return new Family<>(
        name, 2, Family.Size.FACTOR, List.of(Target.FURTHER), ways, scenarios);
  }

  private static double error(SplittableRandom random) {
    return random.nextDouble(0.2, 0.6);
  }

  private static PoolingSettings settings() {
    return new PoolingSettings(
        TauSquaredEstimators.named("restricted-maximum-likelihood"),
        MeanIntervals.normal(),
        new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        Way.LEVEL);
  }

  private static EffectSample drawn(SplittableRandom random, double[] truths) {
    double[] effects = new double[truths.length];
    double[] variances = new double[truths.length];
    for (int i = 0; i < truths.length; i++) {
      double error = error(random);
      effects[i] = truths[i] + error * random.nextGaussian();
      variances[i] = error * error;
    }
    return EffectSample.of(effects, variances);
  }

  private static Told effects(SplittableRandom random, int studies, double tau) {
    double[] truths = new double[studies];
    for (int i = 0; i < studies; i++) {
      truths[i] = tau * random.nextGaussian();
    }
    EffectSample sample = drawn(random, truths);
    Pooled pooled = InverseVariance.pool(sample, settings());
    Proper posterior =
        (Proper) Posterior.of(sample, new Priors(MeanPrior.FLAT, new TauPrior.Flat()));
    return new Told(
        tau * random.nextGaussian(),
        pooled.prediction(),
        posterior.predictive().map(further -> further.equalTailed(Way.LEVEL)),
        pooled.heterogeneity().tauSquared().orElseThrow() == 0);
  }

  /** Studies of two arms take pairs in turn, every fifth has three. True effects are all 0. */
  private static Told network(SplittableRandom random, int studies, double tau) {
    List<NetworkStudy> drawn = new ArrayList<>();
    for (int i = 0; i < studies; i++) {
      List<String> arms =
          i % 5 == 4
              ? TREATMENTS
              : List.of(TREATMENTS.get(i % 3 / 2), TREATMENTS.get(1 + (i % 3 + 1) / 2));
      List<Double> effects = new ArrayList<>();
      List<List<Double>> covariance = new ArrayList<>();
      double error = error(random) / Math.sqrt(2);
      // Arms apart by tau/root 2 each, so that every contrast has the variance tau squared.
      double first = random.nextGaussian() * Math.hypot(error, tau / Math.sqrt(2));
      for (int arm = 1; arm < arms.size(); arm++) {
        effects.add(random.nextGaussian() * Math.hypot(error, tau / Math.sqrt(2)) - first);
        List<Double> row = new ArrayList<>();
        for (int other = 1; other < arms.size(); other++) {
          row.add((arm == other ? 2 : 1) * error * error);
        }
        covariance.add(row);
      }
      drawn.add(new NetworkStudy("S" + i, arms, effects, covariance));
    }
    Network estimated = fitted(drawn, Spread.T_K_MINUS_2);
    BiFunction<Network, Integer, Optional<Interval>> limits =
        (network, place) -> network.predictions().map(all -> all.of(place, 0));
    return new Told(
        tau * random.nextGaussian(),
        limits.apply(estimated, 1),
        limits.apply(fitted(drawn, Spread.UNKNOWN), 1),
        estimated.heterogeneity().tauSquared().orElseThrow().value() == 0);
  }

  private static Network fitted(List<NetworkStudy> studies, Spread spread) {
    NetworkSettings settings =
        new NetworkSettings(
            TauSquaredEstimators.named("restricted-maximum-likelihood"),
            spread,
            TauSquaredInterval.Q_PROFILE,
            Way.LEVEL);
    return ((Network.Fitted.Done) Network.of(studies, "A", settings)).network();
  }

  /** Half of the variance lies between teams and half within; 0 is that between teams. */
  private static Told teams(SplittableRandom random, int teams, double tau) {
    double half = tau / Math.sqrt(2);
    List<String> clusters = new ArrayList<>();
    List<Double> truths = new ArrayList<>();
    for (int team = 0; team < teams; team++) {
      double own = half * random.nextGaussian();
      // Two rows at least of the first, so that the variances can be told apart.
      int rows = team == 0 ? 2 : random.nextInt(1, MOST_ROWS_OF_A_TEAM + 1);
      for (int row = 0; row < rows; row++) {
        clusters.add("T" + team);
        truths.add(own + half * random.nextGaussian());
      }
    }
    EffectSample sample =
        drawn(random, truths.stream().mapToDouble(Double::doubleValue).toArray());
    ThreeLevelPooling estimated = pooled(sample, clusters, FurtherCluster.T_K_MINUS_2);
    return new Told(
        half * random.nextGaussian() + half * random.nextGaussian(),
        estimated.pooled().prediction(),
        pooled(sample, clusters, FurtherCluster.UNKNOWN_SPREAD).pooled().prediction(),
        estimated.fit().orElseThrow().betweenVariance().orElseThrow() == 0);
  }

  private static ThreeLevelPooling pooled(
      EffectSample sample, List<String> clusters, FurtherCluster further) {
    return ThreeLevelPooling.of(
        sample, clusters, true, settings(), ClusterLimits.T_CLUSTERS, further);
  }
}
