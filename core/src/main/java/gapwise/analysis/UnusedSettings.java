package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Says which settings of a plan have no bearing on what it asks. */
final class UnusedSettings {
  private static final Map<String, Predicate<ObjectNode>> USED = new LinkedHashMap<>();

  static {
    Predicate<ObjectNode> random = plan -> is(plan, "model", "random-effects");
    Predicate<ObjectNode> never = plan -> false;
    for (String field :
        List.of(
            "betweenStudyVariance",
            "predictionInterval",
            "predictionStandardError",
            "tauSquaredInterval")) {
      USED.put(field, random);
    }
    for (String field : List.of("prior", "probabilities", "priorSensitivity")) {
      USED.put(field, plan -> is(plan, "model", "bayesian"));
    }
    USED.put("subgroupVariance", random.and(plan -> plan.has("subgroup")));
    USED.put("zeroCells", PlanDefaults::usesZeroCells);
    Predicate<ObjectNode> doubleArcsine = plan -> is(plan, "scale", "double-arcsine");
    USED.put("backTransformN", doubleArcsine);
    USED.put("backTransformAlsoWith", doubleArcsine);
    USED.put("reportedAs", plan -> is(plan, "measure", "reported-effect"));
    USED.put("exactModel", ExactModels::hasTwoGroups);
    USED.put("treatmentCoding", ExactModels::hasCoding);
    USED.put("quadraturePoints", ExactModels::asked);
    Predicate<ObjectNode> standardised =
        plan -> is(plan, "measure", "standardised-mean-difference");
    USED.put("smallSampleCorrection", standardised);
    USED.put("standardisedVariance", standardised);
    for (String field :
        List.of("reference", "better", "networkEffects", "moderatorTest", "cluster")) {
      USED.put(field, never);
    }
  }

  private UnusedSettings() {}

  private static boolean is(ObjectNode plan, String field, String value) {
    return plan.path(field).asText().equals(value);
  }

  /** A warning for each setting without bearing. */
  static List<Result.Warning> of(ObjectNode plan) {
    List<Result.Warning> warnings = new ArrayList<>();
    USED.forEach(
        (field, used) -> {
          if (plan.has(field) && !used.test(plan)) {
            warnings.add(
                Result.Warning.of(
                    "setting-not-used",
                    "'" + field + "' has no bearing on this measure and model and was not used"));
          }
        });
    return warnings;
  }
}
