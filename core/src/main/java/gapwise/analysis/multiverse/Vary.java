package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanHead;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What a multiverse varies, and what else it is asked.
 *
 * @param models words of models
 * @param scales words of scales; empty where the measure has one
 * @param emptyCells what is done about empty cells; empty where nothing is
 * @param missingSpread what is done about means without a standard deviation; empty for other
 *     measures
 * @param estimators of tau squared, for random effects
 * @param intervals for random effects
 * @param exactIntervals for the exact likelihood
 * @param subsets one for each column that narrows the rows
 * @param leaveOneOut whether everything is done again without each study
 * @param threshold as people read it, to tell sides; empty if none is asked
 * @param list whether every analysis is told
 */
record Vary(
    List<String> models,
    List<String> scales,
    List<AskedCells> emptyCells,
    List<String> missingSpread,
    List<String> estimators,
    List<String> intervals,
    List<String> exactIntervals,
    List<ColumnSubsets> subsets,
    boolean leaveOneOut,
    OptionalDouble threshold,
    boolean list) {
  Vary {
    models = List.copyOf(models);
    scales = List.copyOf(scales);
    emptyCells = List.copyOf(emptyCells);
    missingSpread = List.copyOf(missingSpread);
    estimators = List.copyOf(estimators);
    intervals = List.copyOf(intervals);
    exactIntervals = List.copyOf(exactIntervals);
    subsets = List.copyOf(subsets);
  }

  /** Words of all intervals, each once. */
  List<String> allIntervals() {
    return Stream.concat(intervals.stream(), exactIntervals.stream()).distinct().toList();
  }

  /** Reads it from a plan whose defaults are filled in. */
  static Vary of(ObjectNode full) {
    JsonNode vary = full.get("vary");
    List<AskedCells> emptyCells = new ArrayList<>();
    vary.path("emptyCells").forEach(rule -> emptyCells.add(AskedCells.of(rule)));
    List<ColumnSubsets> subsets = new ArrayList<>();
    vary.path("subsets").forEach(one -> subsets.add(ColumnSubsets.of(one)));
    return new Vary(
        PlanHead.texts(vary.path("model")),
        PlanHead.texts(vary.path("scale")),
        emptyCells,
        PlanHead.texts(vary.path("missingSpread")),
        PlanHead.texts(vary.path("betweenStudyVariance")),
        PlanHead.texts(vary.path("interval")),
        PlanHead.texts(vary.path("exactInterval")),
        subsets,
        vary.path("leaveOneOut").asBoolean(),
        Optional.ofNullable(full.get("threshold"))
            .map(threshold -> OptionalDouble.of(threshold.asDouble()))
            .orElse(OptionalDouble.empty()),
        full.path("list").asBoolean());
  }
}
