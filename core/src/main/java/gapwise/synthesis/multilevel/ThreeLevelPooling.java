package gapwise.synthesis.multilevel;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.Interval;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.multilevel.ThreeLevelFit.Told;
import gapwise.synthesis.pooling.InverseVariance;
import gapwise.synthesis.pooling.Pooled;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One mean of effects in clusters.
 *
 * @param pooled the mean and what goes with it
 * @param fit the model; empty where nothing but a single row can be told, or nothing at all
 */
public record ThreeLevelPooling(Pooled pooled, Optional<ThreeLevelFit> fit) {

  /**
   * Pools; never throws for a sample of any size.
   *
   * @param clusters of each effect
   * @param restricted whether variances have the highest restricted likelihood, else the full one
   * @param settings for the level; their estimator is not used
   * @param limits how limits are made
   * @param further how a further cluster is told
   */
  public static ThreeLevelPooling of(
      EffectSample sample,
      List<String> clusters,
      boolean restricted,
      PoolingSettings settings,
      ClusterLimits limits,
      FurtherCluster further) {
    if (sample.size() < 2 || sample.hasZeroVariance() || !sample.isWithinArithmetic()) {
      return new ThreeLevelPooling(
          InverseVariance.pool(sample, settings.withCommonEffect()), Optional.empty());
    }
    ClusteredRows rows = ClusteredRows.of(sample, clusters);
    ThreeLevelFit fit = ThreeLevelModel.fit(rows, restricted);
    Optional<Interval> prediction = further.limits(rows, fit, settings.level());
    List<Problem> warnings = new ArrayList<>(warnings(fit));
    if (further != FurtherCluster.UNASKED && prediction.isEmpty() && FurtherCluster.isTold(fit)) {
      warnings.add(
          new Problem("", "prediction-left-out", say("analysis.further-cluster-left-out")));
    }
    double standardError = Math.sqrt(fit.covariance(0, 0));
    PooledMean mean =
        PooledMean.symmetric(
            fit.coefficient(0), standardError, limits.reference(fit), settings.level());
    Pooled pooled =
        new Pooled(
            Optional.of(mean),
            prediction,
            fit.heterogeneity(),
            fit.shares(),
            OptionalDouble.of(standardError),
            Optional.of(
                new Pooled.Likelihood(fit.logLikelihood(), fit.restricted(), fit.converged())),
            warnings);
    return new ThreeLevelPooling(pooled, Optional.of(fit));
  }

  /** Fewer tell little of the variance between them: common practice, no source. */
  private static final int FEW_CLUSTERS = 10;

  /** What a reader of a fit must know. */
  public static List<Problem> warnings(ThreeLevelFit fit) {
    Problems warnings = new Problems();
    if (fit.told() == Told.ONLY_SUM) {
      warnings.add("", "variances-not-apart", say("analysis.variances-not-apart"));
    }
    if (fit.told() == Told.ONLY_WITHIN) {
      warnings.add(
          "",
          "too-few-clusters",
          say(
              fit.clusters() == 1
                  ? "analysis.one-cluster"
                  : "analysis.moderators-take-up-clusters"));
    }
    if (fit.betweenVariance().orElse(1) == 0) {
      warnings.add(
          "", "between-study-variance-at-zero", say("analysis.variance-between-clusters-at-zero"));
    }
    if (fit.withinVariance().orElse(1) == 0) {
      warnings.add(
          "", "within-cluster-variance-at-zero", say("analysis.variance-within-clusters-at-zero"));
    }
    if (fit.told() == Told.ONLY_SUM && fit.totalVariance().orElse(1) == 0) {
      warnings.add("", "between-study-variance-at-zero", say("analysis.both-variances-at-zero"));
    }
    if (fit.told() == Told.APART && fit.clusters() < FEW_CLUSTERS) {
      warnings.add(
          "",
          "few-clusters",
          say("analysis.few-clusters-for-variances", Map.of("clusters", fit.clusters())));
    }
    if (!fit.converged()) {
      warnings.add("", "did-not-converge", say("analysis.two-variances-did-not-settle"));
    }
    return warnings.list();
  }
}
