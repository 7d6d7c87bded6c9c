package gapwise.analysis.synthesis;

import gapwise.analysis.clusters.RobustResult;
import gapwise.analysis.clusters.ThreeLevelPart;
import gapwise.analysis.moderators.FittedRows;
import gapwise.analysis.moderators.RegressionPart;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.pooling.InfluencePart;
import gapwise.analysis.pooling.InfluenceResult;
import gapwise.analysis.pooling.PlaceResult;
import gapwise.analysis.pooling.PooledPart;
import gapwise.analysis.pooling.PooledResult;
import gapwise.analysis.pooling.RepeatedStudies;
import gapwise.analysis.pooling.StudyTable;
import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.pooling.ZeroVariances;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.smallstudy.FunnelResult;
import gapwise.analysis.smallstudy.SmallStudyPart;
import gapwise.analysis.subgroups.SubgroupPart;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Runs a synthesis: rows to effects, effects to the parts the plan asks for, one after the other,
 * since their warnings are told in this order.
 */
final class SynthesisRun<D extends StudyData> {
  private final AskedParts asked;
  private final Synthesis<D> synthesis;
  private final List<Result.Warning> warnings;
  private final boolean threeLevels;

  private SynthesisRun(AskedParts asked, Synthesis<D> synthesis, List<Result.Warning> warnings) {
    this.asked = asked;
    this.synthesis = synthesis;
    this.warnings = warnings;
    this.threeLevels = synthesis.plan().model().cluster().isPresent();
  }

  static <D extends StudyData> Result of(SynthesisPlan plan, Measure<D> measure, DataTable table) {
    Synthesis<D> synthesis = Synthesis.of(plan.pooling(), measure, table);
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(plan.unused());
    warnings.addAll(synthesis.studies().warnings());
    if (plan.pooling().model().cluster().isEmpty() && plan.parts().robust().isEmpty()) {
      warnings.addAll(RepeatedStudies.warnings(synthesis.studies()));
    }
    SynthesisResult result = new SynthesisRun<>(plan.parts(), synthesis, warnings).result();
    StudyWarnings.rowsWithoutWidth(result.studies()).ifPresent(warnings::add);
    ZeroVariances.advise(plan.pooling().measure(), warnings);
    warnings.addAll(SpreadTakenAsKnown.of(plan.head().json(), result));
    return new Result(
        plan.head().json(), StudyTable.data(synthesis.studies(), table), result, warnings);
  }

  private SynthesisResult result() {
    boolean moderated = asked.moderators().isPresent();
    Optional<PooledResult> pooled =
        moderated ? Optional.empty() : Optional.of(PooledPart.of(synthesis, warnings));
    Optional<List<PlaceResult>> places =
        moderated ? Optional.empty() : asked.places().of(synthesis);
    Optional<FittedRows> fitted =
        threeLevels
            ? Optional.empty()
            : asked.moderators().map(one -> RegressionPart.of(synthesis, one, warnings));
    Optional<RobustResult> robust =
        threeLevels
            ? Optional.empty()
            : asked.robust().flatMap(one -> one.of(synthesis, asked.moderators(), warnings));
    Optional<SubgroupsResult> groups =
        SubgroupPart.of(synthesis, asked.places(), asked.bayesian(), warnings);
    SmallStudyPart.Made smallStudies = asked.smallStudies().of(synthesis, warnings);
    Optional<FunnelResult> funnel =
        asked.funnel().flatMap(one -> one.of(synthesis, smallStudies.notes(), warnings));
    Optional<InfluenceResult> influence =
        asked.influence() && !moderated ? InfluencePart.of(synthesis, warnings) : Optional.empty();
    Optional<List<InfluenceResult.Cumulative>> cumulative =
        asked.cumulative().flatMap(one -> one.of(synthesis, warnings));
    ThreeLevelPart.Told levels =
        ThreeLevelPart.of(synthesis, asked.moderators(), asked.robust(), warnings);
    Optional<RegressionResult> regression = fitted.flatMap(FittedRows::regression);
    return new SynthesisResult(
        pooled.or(() -> fitted.map(FittedRows::rows)).or(levels::rows).orElseThrow(),
        places,
        groups,
        influence,
        cumulative,
        regression.or(levels::regression),
        robust.or(levels::robust),
        levels.variances(),
        asked.bayesian().of(synthesis, warnings),
        smallStudies.result(),
        funnel);
  }
}
