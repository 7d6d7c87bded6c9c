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
 * @param limits how limits are made
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
    Limits limits,
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
    subsets = List.copyOf(subsets);
  }

  /** No robust variance, among the words of those. */
  static final String MODELS_OWN = "none";

  /**
   * How limits are made: of a pooled value by an interval, of a regression by its test or by a
   * robust variance.
   *
   * @param intervals for random effects
   * @param exactIntervals for the exact likelihood
   * @param tests of moderators; empty without them
   * @param robust variances that allow for clusters; empty where no cluster is named
   */
  record Limits(
      List<String> intervals,
      List<String> exactIntervals,
      List<String> tests,
      List<String> robust) {
    Limits {
      intervals = List.copyOf(intervals);
      exactIntervals = List.copyOf(exactIntervals);
      tests = List.copyOf(tests);
      robust = List.copyOf(robust);
    }

    private static Limits of(JsonNode vary) {
      return new Limits(
          PlanHead.texts(vary.path("interval")),
          PlanHead.texts(vary.path("exactInterval")),
          PlanHead.texts(vary.path("moderatorTest")),
          PlanHead.texts(vary.path("robustVariance")));
    }

    /** Words of all intervals, each once. */
    List<String> allIntervals() {
      return Stream.concat(intervals.stream(), exactIntervals.stream()).distinct().toList();
    }

    /** The tests that a model has, in their order. */
    List<String> testsOf(String model) {
      return tests.stream().filter(test -> ModeratorTests.has(model, test)).toList();
    }
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
        Limits.of(vary),
        subsets,
        vary.path("leaveOneOut").asBoolean(),
        Optional.ofNullable(full.get("threshold"))
            .map(threshold -> OptionalDouble.of(threshold.asDouble()))
            .orElse(OptionalDouble.empty()),
        full.path("list").asBoolean());
  }
}
