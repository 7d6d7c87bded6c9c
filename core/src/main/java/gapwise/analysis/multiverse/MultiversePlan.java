package gapwise.analysis.multiverse;

import gapwise.analysis.moderators.AskedAbout;
import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.EffectsModel;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.EmptyCells;
import gapwise.effect.MeasureOptions;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.pooling.MeanIntervals;
import gapwise.synthesis.pooling.PoolingSettings;
import gapwise.synthesis.regression.RegressionSettings;
import gapwise.synthesis.regression.RegressionTest;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One body of evidence analysed in every way asked for.
 *
 * @param base the synthesis as the plan itself would have it
 * @param vary what is varied
 * @param own what the plan itself would choose
 * @param pages what is shown on pages, which is one of the analyses unless the plan varies others
 * @param fromCounts the ways of pooling from counts
 * @param commonByEffects whether a common effect is wanted and pooled by the variances of effects
 * @param usesEmptyCells whether what is done about empty cells has a bearing, by the scale
 * @param moderated what explains the effects and is told of it; empty for a pooled value
 * @param unused what the plan says without bearing
 */
record MultiversePlan(
    PlanHead head,
    PoolingPlan base,
    Vary vary,
    OwnSettings own,
    OwnSettings pages,
    List<FromCounts> fromCounts,
    boolean commonByEffects,
    Map<String, Boolean> usesEmptyCells,
    Optional<Moderated> moderated,
    List<Result.Warning> unused)
    implements Plan {
  MultiversePlan {
    fromCounts = List.copyOf(fromCounts);
    usesEmptyCells = Map.copyOf(usesEmptyCells);
    unused = List.copyOf(unused);
  }

  /**
   * A regression in place of a pooled value.
   *
   * @param asked the moderators
   * @param about what of it is told
   * @param cluster the column of clusters for robust variances; empty for none
   */
  record Moderated(AskedRegression asked, AskedAbout about, Optional<String> cluster) {}

  /**
   * One way of pooling from counts, or of explaining them.
   *
   * @param model its word
   * @param interval its word, with moderators that of their test; empty where the model has one
   *     only
   * @param how studies are read and pooled
   */
  record FromCounts(String model, String interval, PoolingPlan how) {}

  @Override
  public Result runOn(DataTable table) {
    return MultiverseRun.of(this, base.how(), table);
  }

  /** Effects read on a scale and with a rule for empty cells, to be pooled by their variances. */
  PoolingPlan reading(String scale, EmptyCells emptyCells) {
    MeasureOptions given = base.options();
    return base.with(
        new MeasureOptions(
            scale,
            emptyCells,
            given.backTransformN(),
            given.backTransformAlsoWith(),
            given.exactFactor(),
            given.factorSquaredVariance(),
            given.reportedAsRatio(),
            given.limitsLevel(),
            given.correlation(),
            MeasureOptions.Pooling.INVERSE_VARIANCE),
        new EffectsModel(common()));
  }

  /** Pooling by a common effect. */
  PoolingSettings common() {
    return base.model().settings().withCommonEffect();
  }

  /** Explaining effects by random effects, or by a common one where there is no estimator. */
  RegressionSettings regression(Optional<String> estimator, RegressionTest test) {
    return estimator.isEmpty()
        ? new RegressionSettings(common(), RegressionTest.NORMAL)
        : new RegressionSettings(random(estimator.get(), "normal"), test);
  }

  /** Pooling by random effects. */
  PoolingSettings random(String estimator, String interval) {
    PoolingSettings given = base.model().settings();
    return new PoolingSettings(
        TauSquaredEstimators.named(estimator),
        MeanIntervals.named(interval).orElse(MeanIntervals.normal()),
        given.prediction().asKnown(),
        given.tauSquaredInterval(),
        given.level());
  }
}
