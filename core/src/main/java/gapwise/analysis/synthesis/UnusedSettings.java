package gapwise.analysis.synthesis;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Says which settings of a plan have no bearing on what it asks. */
public final class UnusedSettings {
  private static final Map<String, Predicate<ObjectNode>> USED = new LinkedHashMap<>();

  static {
    Predicate<ObjectNode> random = plan -> is(plan, "model", "random-effects");

    for (String field :
        List.of(
            "betweenStudyVariance",
            "predictionInterval",
            "predictionStandardError",
            "tauSquaredInterval")) {
      USED.put(field, random);
    }
    USED.put("predictionInterval", random.or(ExactModels::asked));
    // With the spread not known the mean is normal at each value of it.
    USED.put(
        "predictionStandardError",
        random.and(plan -> !is(plan, "predictionInterval", "unknown-spread")));
    for (String field : List.of("prior", "probabilities", "priorSensitivity")) {
      USED.put(field, plan -> is(plan, "model", "bayesian"));
    }
    Predicate<ObjectNode> threeLevel = plan -> is(plan, "model", "three-level");
    USED.put("betweenStudyVariance", random.or(threeLevel));
    USED.computeIfPresent(
        "predictionInterval",
        (name, used) -> used.or(threeLevel.and(plan -> !plan.has("moderators"))));
    USED.put("subgroupVariance", random.and(plan -> plan.has("subgroup")));
    USED.put("subgroupBlanks", plan -> plan.has("subgroup"));
    USED.put(
        "moderatorTest",
        plan ->
            plan.has("moderators")
                && (random.test(plan)
                    || threeLevel.test(plan)
                    || ExactModels.asked(plan)
                    || is(plan, "model", "network")
                    || is(plan, "moderatorTest", "normal")));
    USED.put("cluster", plan -> plan.has("robustVariance") || is(plan, "model", "three-level"));
    USED.put("continuityCorrection", SynthesisDefaults::usesContinuityCorrection);
    USED.put("uninformativeStudies", SynthesisDefaults::comparesCounts);
    Predicate<ObjectNode> doubleArcsine = plan -> is(plan, "scale", "double-arcsine");
    USED.put("backTransformN", doubleArcsine);
    USED.put("backTransformAlsoWith", doubleArcsine);
    for (String field : List.of("reportedAs", "limitsLevel")) {
      USED.put(field, plan -> is(plan, "measure", "reported-effect"));
    }
    USED.put(
        "correlation",
        plan ->
            is(plan, "measure", "mean-difference")
                || (is(plan, "measure", "mean") && is(plan, "scale", "raw")));
    USED.put(
        "likelihood",
        plan ->
            ExactModels.hasTwoGroups(plan)
                || ExactModels.isBetaBinomial(plan)
                || ExactModels.isNetwork(plan)
                || is(plan, "model", "bayesian"));
    USED.put("armSpread", ExactModels::hasArmSpread);
    USED.put("quadraturePoints", ExactModels::hasPoints);
    Predicate<ObjectNode> standardised =
        plan -> is(plan, "measure", "standardised-mean-difference");
    USED.put("smallSampleCorrection", standardised);
    USED.put("standardisedVariance", standardised);
    Predicate<ObjectNode> network = plan -> is(plan, "model", "network");
    for (String field : List.of("networkEffects", "reference", "better", "rankingDraws", "seed")) {
      USED.put(field, network);
    }
    Predicate<ObjectNode> randomNetwork = network.and(plan -> is(plan, "networkEffects", "random"));
    USED.computeIfPresent("predictionInterval", (name, used) -> used.or(randomNetwork));
    Predicate<ObjectNode> ofEffects = randomNetwork.and(plan -> !ExactModels.isNetwork(plan));
    for (String field : List.of("betweenStudyVariance", "tauSquaredInterval")) {
      USED.computeIfPresent(field, (name, used) -> used.or(ofEffects));
    }
  }

  private UnusedSettings() {}

  private static boolean is(ObjectNode plan, String field, String value) {
    return plan.path(field).asText().equals(value);
  }

  /** A warning for each setting without bearing. */
  public static List<Result.Warning> of(ObjectNode plan) {
    List<Result.Warning> warnings = new ArrayList<>();
    USED.forEach(
        (field, used) -> {
          if (plan.has(field) && !used.test(plan)) {
            warnings.add(
                Result.Warning.of(
                    "setting-not-used", say("analysis.setting-not-used", Map.of("field", field))));
          }
        });
    return warnings;
  }
}
