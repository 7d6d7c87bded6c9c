package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.Measures;
import java.util.List;
import java.util.Set;

/**
 * Fills in what a plan leaves out, as far as it has a meaning for the task, measure and model, so
 * that the filled plan asks the same. Fields come in one order, whatever order they were given in.
 */
final class PlanDefaults {
  /** The order in which docs/plan.md tells the fields; others follow as they were given. */
  private static final List<String> ORDER =
      List.of(
          "task",
          "title",
          "source",
          "columns",
          "summaries",
          "statistics",
          "raters",
          "categories",
          "weights",
          "multiplier",
          "as",
          "numbersAtRisk",
          "groups",
          "horizon",
          "survivalAt",
          "compare",
          "pooledCurve",
          "measure",
          "scale",
          "comparator",
          "intervention",
          "standardDeviation",
          "reportedAs",
          "methods",
          "pooledCounts",
          "model",
          "pooling",
          "networkEffects",
          "likelihood",
          "armSpread",
          "quadraturePoints",
          "betweenStudyVariance",
          "interval",
          "predictionInterval",
          "predictionStandardError",
          "tauSquaredInterval",
          "prior",
          "probabilities",
          "priorSensitivity",
          "continuityCorrection",
          "uninformativeStudies",
          "smallSampleCorrection",
          "standardisedVariance",
          "backTransformN",
          "backTransformAlsoWith",
          "places",
          "subgroup",
          "subgroupVariance",
          "moderators",
          "moderatorTest",
          "predictions",
          "permutationTest",
          "cluster",
          "robustVariance",
          "smallStudyEffects",
          "funnel",
          "influence",
          "cumulativeBy",
          "reference",
          "better",
          "rankingDraws",
          "seed",
          "centre",
          "vary",
          "threshold",
          "list",
          "power",
          "level");

  /** Fields that hold data and no settings. */
  static final Set<String> DATA = Set.of("source", "summaries", "numbersAtRisk");

  private static final Set<String> OF_TWO_GROUPS =
      Set.of("odds-ratio", "risk-ratio", "incidence-rate-ratio");

  private PlanDefaults() {}

  static ObjectNode fill(ObjectNode given) {
    ObjectNode full = copy(given);
    text(given, full, "task", "synthesis");
    switch (full.get("task").asText()) {
      case "interval" -> {
        text(given, full, "measure", "proportion");
        flag(given, full, "pooledCounts");
      }
      case "synthesis" -> synthesis(given, full);
      case "patients-with-summaries" -> patients(given, full);
      case "multiverse" -> {
        synthesis(given, full);
        VaryDefaults.fill(full);
      }
      case "agreement" -> agreement(given, full);
      case "trial" -> trial(given, full);
      case "reconstruct-curve" -> text(given, full, "as", "event-free");
      default -> {
        // conversions and patients' times have no default but the level
      }
    }
    number(given, full, "level", 0.95);
    return inOrder(full);
  }

  /** A copy that may be changed but for the data in it, which it shares: they can be many rows. */
  static ObjectNode copy(ObjectNode plan) {
    ObjectNode copy = JsonNodeFactory.instance.objectNode();
    plan.fields()
        .forEachRemaining(
            field ->
                copy.set(
                    field.getKey(),
                    DATA.contains(field.getKey())
                        ? field.getValue()
                        : field.getValue().deepCopy()));
    return copy;
  }

  private static ObjectNode inOrder(ObjectNode full) {
    ObjectNode ordered = JsonNodeFactory.instance.objectNode();
    ORDER.stream().filter(full::has).forEach(field -> ordered.set(field, full.get(field)));
    full.fields().forEachRemaining(field -> ordered.putIfAbsent(field.getKey(), field.getValue()));
    return ordered;
  }

  private static void patients(ObjectNode given, ObjectNode full) {
    text(given, full, "measure", "proportion");
    boolean events = full.get("measure").asText().equals("proportion");
    text(given, full, "scale", events ? "logit" : "raw");
    text(
        given,
        full,
        "betweenStudyVariance",
        events ? "maximum-likelihood" : "restricted-maximum-likelihood");
    if (events) {
      number(given, full, "quadraturePoints", 25);
    }
    number(given, full, "centre", 0);
  }

  private static void trial(ObjectNode given, ObjectNode full) {
    text(given, full, "measure", "proportion");
    if (full.get("measure").asText().equals("mean")) {
      text(given, full, "scale", "raw");
    }
    number(given, full, "power", 0.8);
  }

  private static void agreement(ObjectNode given, ObjectNode full) {
    List<String> asked = full.get("statistics").valueStream().map(JsonNode::asText).toList();
    if (!given.has("weights") && asked.contains("kappa")) {
      full.putArray("weights").add("none");
    }
    if (given.has("multiplier") || asked.contains("limits-of-agreement")) {
      number(given, full, "multiplier", 1.96);
    }
  }

  private static void synthesis(ObjectNode given, ObjectNode full) {
    text(given, full, "measure", "proportion");
    String measure = full.get("measure").asText();
    List<String> scales = Measures.scales(measure);
    if (scales.size() > 1) {
      text(given, full, "scale", scales.get(0));
    }
    if (measure.equals("reported-effect")) {
      text(given, full, "reportedAs", "analysis-scale");
    }
    text(given, full, "model", "random-effects");
    boolean random = full.get("model").asText().equals("random-effects");
    if (random || full.get("model").asText().equals("three-level")) {
      text(given, full, "betweenStudyVariance", "restricted-maximum-likelihood");
    }
    if (full.get("model").asText().equals("common-effect")) {
      text(given, full, "pooling", "inverse-variance");
    }
    if (ExactModels.asked(full)) {
      ExactModels.fill(given, full);
    }
    text(given, full, "interval", random ? "hartung-knapp" : "normal");
    if (random) {
      text(given, full, "predictionInterval", "t-k-minus-2");
      text(given, full, "predictionStandardError", "sum-of-weights");
      text(given, full, "tauSquaredInterval", "q-profile");
    }
    if (full.get("model").asText().equals("network")) {
      network(given, full);
    }
    if (full.get("model").asText().equals("bayesian")) {
      prior(given, full);
    }
    measureOptions(given, full, measure);
    if (given.has("subgroup") && random) {
      text(given, full, "subgroupVariance", "separate");
    }
    if (given.has("moderators")) {
      moderators(given, full, random);
    }
    SmallStudyDefaults.fill(given, full);
    flag(given, full, "influence");
  }

  private static void network(ObjectNode given, ObjectNode full) {
    text(given, full, "networkEffects", "random");
    if (full.get("networkEffects").asText().equals("random")) {
      text(given, full, "betweenStudyVariance", "restricted-maximum-likelihood");
      text(given, full, "tauSquaredInterval", "q-profile");
    }
    text(given, full, "better", "lower");
    full.put("rankingDraws", given.path("rankingDraws").asInt(10_000));
    full.put("seed", given.path("seed").asLong(1));
  }

  private static void moderators(ObjectNode given, ObjectNode full, boolean random) {
    text(given, full, "moderatorTest", random ? "hartung-knapp" : "normal");
    for (JsonNode one : full.path("predictions")) {
      if (one.has("from") && one.has("to") && !one.has("points")) {
        ((ObjectNode) one).put("points", 60);
      }
    }
    if (given.has("permutationTest")) {
      ObjectNode test = full.putObject("permutationTest");
      test.put("permutations", given.at("/permutationTest/permutations").asInt(1000));
      test.put("seed", given.at("/permutationTest/seed").asLong(20261125));
    }
  }

  private static void prior(ObjectNode given, ObjectNode full) {
    JsonNode asked = given.path("prior");
    ObjectNode prior = full.putObject("prior");
    prior.set(
        "mean", asked.has("mean") ? asked.get("mean") : JsonNodeFactory.instance.textNode("flat"));
    if (asked.has("tau")) {
      prior.set("tau", asked.get("tau"));
    } else {
      prior.putObject("tau").put("halfNormal", 0.5);
    }
  }

  private static void measureOptions(ObjectNode given, ObjectNode full, String measure) {
    if (usesContinuityCorrection(full)) {
      full.set("continuityCorrection", continuityCorrection(given.path("continuityCorrection")));
    }
    if (comparesCounts(full)) {
      text(given, full, "uninformativeStudies", "leave-out");
    }
    if (measure.equals("standardised-mean-difference")) {
      text(given, full, "smallSampleCorrection", "exact");
      text(given, full, "standardisedVariance", "corrected-effect");
    }
    if (full.path("scale").asText().equals("double-arcsine")) {
      if (!given.has("backTransformN")) {
        full.put("backTransformN", "harmonic-mean");
      }
    }
  }

  /** A continuity correction with what it leaves out filled in. */
  static ObjectNode continuityCorrection(JsonNode asked) {
    ObjectNode correction = JsonNodeFactory.instance.objectNode();
    correction.set(
        "amount",
        asked.has("amount") ? asked.get("amount") : JsonNodeFactory.instance.numberNode(0.5));
    correction.put("tables", asked.path("tables").asText("with-an-empty-cell"));
    return correction;
  }

  /** Whether a study can say nothing of the measure because all, or none, had the event. */
  static boolean comparesCounts(ObjectNode full) {
    return OF_TWO_GROUPS.contains(full.path("measure").asText());
  }

  /** Whether anything is ever added to empty cells, or a study left out for them. */
  static boolean usesContinuityCorrection(ObjectNode full) {
    String scale = ExactModels.asked(full) ? "" : full.path("scale").asText();
    return switch (full.path("measure").asText()) {
      case "proportion" -> scale.equals("logit") || scale.equals("log");
      case "incidence-rate" -> scale.equals("log");
      default -> comparesCounts(full);
    };
  }

  private static void text(ObjectNode given, ObjectNode full, String field, String usual) {
    full.put(field, given.path(field).asText(usual));
  }

  private static void flag(ObjectNode given, ObjectNode full, String field) {
    full.put(field, given.path(field).asBoolean(false));
  }

  private static void number(ObjectNode given, ObjectNode full, String field, double usual) {
    full.set(
        field, given.has(field) ? given.get(field) : JsonNodeFactory.instance.numberNode(usual));
  }
}
