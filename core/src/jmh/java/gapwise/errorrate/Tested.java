package gapwise.errorrate;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import gapwise.synthesis.multilevel.ClusterLimits;
import gapwise.synthesis.multilevel.FurtherCluster;
import gapwise.synthesis.multilevel.ThreeLevelPooling;
import gapwise.synthesis.multilevel.ThreeLevelRegression;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.pooling.Prediction;
import gapwise.synthesis.pooling.Subgroups;
import gapwise.synthesis.regression.ClusteredFit;
import gapwise.synthesis.regression.DesignMatrix;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import gapwise.synthesis.regression.RobustCoefficient;
import gapwise.synthesis.regression.RobustVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** A test as the plans have it; its p value is empty where the test is left out. */
enum Tested {
  /** The default of a plan for up to five studies a group. */
  HALVES_F("two groups, half of the studies each: common variance, F", false, d -> groups(d, 0, true)),
  HALVES_WELCH("the same: separate variances, Welch's F", false, d -> groups(d, 0, false)),
  HALVES_CHI("the same: separate variances, chi-squared", false, d -> chiSquared(d, 0)),
  TWO_F("two studies against the rest: common variance, F", false, d -> groups(d, 2, true)),
  TWO_WELCH("the same: separate variances, Welch's F", false, d -> groups(d, 2, false)),
  TWO_CHI("the same: separate variances, chi-squared", false, d -> chiSquared(d, 2)),
  SLOPE("a moderator: Knapp and Hartung's t", false, d -> slope(d, RegressionTest.HARTUNG_KNAPP)),
  SLOPE_NORMAL("the same: normal", false, d -> slope(d, RegressionTest.NORMAL)),
  MEAN_CR2("mean of teams: cr2", true, d -> robust(d, 0, RobustVariance.Correction.CR2)),
  MEAN_CR1("the same: cr1", true, d -> robust(d, 0, RobustVariance.Correction.CR1)),
  MEAN_CR0("the same: cr0", true, d -> robust(d, 0, RobustVariance.Correction.CR0)),
  MEAN_THREE("the same: three levels, t", true, Tested::threeLevels),
  SLOPE_CR2("a moderator of teams: cr2", true, d -> robust(d, 1, RobustVariance.Correction.CR2)),
  SLOPE_CR1("the same: cr1", true, d -> robust(d, 1, RobustVariance.Correction.CR1)),
  SLOPE_CR0("the same: cr0", true, d -> robust(d, 1, RobustVariance.Correction.CR0)),
  SLOPE_THREE("the same: three levels, t", true, Tested::threeLevelSlope);

  private static final double LEVEL = 0.95;

  private final String words;
  private final boolean ofTeams;
  private final Function<World.Drawn, OptionalDouble> pValue;

  Tested(String words, boolean ofTeams, Function<World.Drawn, OptionalDouble> pValue) {
    this.words = words;
    this.ofTeams = ofTeams;
    this.pValue = pValue;
  }

  String words() {
    return words;
  }

  boolean ofTeams() {
    return ofTeams;
  }

  OptionalDouble pValue(World.Drawn drawn) {
    return pValue.apply(drawn);
  }

  private static PoolingSettings settings(String interval) {
    return new PoolingSettings(
        TauSquaredEstimators.named("restricted-maximum-likelihood"),
        MeanIntervals.named(interval).orElseThrow(),
        new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
        TauSquaredInterval.Q_PROFILE,
        LEVEL);
  }

  private static List<String> levels(EffectSample sample, int first) {
    int ofFirst = first == 0 ? sample.size() / 2 : first;
    List<String> levels = new ArrayList<>();
    for (int i = 0; i < sample.size(); i++) {
      levels.add(i < ofFirst ? "first" : "second");
    }
    return levels;
  }

  private static OptionalDouble groups(World.Drawn drawn, int first, boolean common) {
    PoolingSettings settings = settings("hartung-knapp-never-narrower");
    List<String> levels = levels(drawn.sample(), first);
    Subgroups groups =
        common
            ? Subgroups.common(drawn.sample(), levels, settings)
            : Subgroups.separate(drawn.sample(), levels, settings);
    return groups.test().pValue();
  }

  private static OptionalDouble chiSquared(World.Drawn drawn, int first) {
    return Subgroups.separate(drawn.sample(), levels(drawn.sample(), first), settings("normal"))
        .test()
        .pValue();
  }

  private static DesignMatrix design(World.Drawn drawn, int moderators) {
    if (moderators == 0) {
      return DesignMatrix.ofOneMean(drawn.sample().size());
    }
    return DesignMatrix.of(
        List.of(DesignMatrix.INTERCEPT, "moderator"),
        drawn.moderators().stream().map(x -> new double[] {1, x}).toList());
  }

  private static OptionalDouble slope(World.Drawn drawn, RegressionTest test) {
    Regression fit =
        Regression.of(
            drawn.sample(),
            design(drawn, 1),
            new RegressionSettings(settings("normal"), test));
    return fit.fit().isEmpty()
        ? OptionalDouble.empty()
        : fit.fit().get().coefficients().get(1).value().pValue();
  }

  private static OptionalDouble robust(
      World.Drawn drawn, int moderators, RobustVariance.Correction correction) {
    Regression fit =
        Regression.of(
            drawn.sample(),
            design(drawn, moderators),
            new RegressionSettings(settings("normal"), RegressionTest.NORMAL));
    if (fit.fit().isEmpty()) {
      return OptionalDouble.empty();
    }
    List<RobustCoefficient> told =
        RobustVariance.of(ClusteredFit.of(fit.fit().get(), drawn.teams()), correction, LEVEL)
            .coefficients();
    return told.size() <= moderators
        ? OptionalDouble.empty()
        : OptionalDouble.of(told.get(moderators).pValue());
  }

  private static OptionalDouble threeLevels(World.Drawn drawn) {
    return ThreeLevelPooling.of(
            drawn.sample(),
            drawn.teams(),
            true,
            settings("normal"),
            ClusterLimits.T_CLUSTERS,
            FurtherCluster.UNASKED)
        .pooled()
        .mean()
        .map(PooledMean::pValue)
        .orElse(OptionalDouble.empty());
  }

  private static OptionalDouble threeLevelSlope(World.Drawn drawn) {
    ThreeLevelRegression fit =
        ThreeLevelRegression.of(
            drawn.sample(),
            design(drawn, 1),
            drawn.teams(),
            true,
            LEVEL,
            ClusterLimits.T_CLUSTERS);
    return fit.fit().isEmpty()
        ? OptionalDouble.empty()
        : fit.coefficients().get(1).value().pValue();
  }
}
