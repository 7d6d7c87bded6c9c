package gapwise.analysis.synthesis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.bayesian.PriorReader;
import gapwise.analysis.clusters.RobustPart;
import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.network.NetworkModel;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.smallstudy.SmallStudyDefaults;
import gapwise.effect.Measures;
import gapwise.synthesis.pooling.MeanIntervals;
import java.util.List;
import java.util.Set;

/**
 * Fills in what a plan of a synthesis leaves out, as far as measure and model give it a meaning.
 */
public final class SynthesisDefaults {
  private static final Set<String> OF_TWO_GROUPS =
      Set.of("odds-ratio", "risk-ratio", "incidence-rate-ratio");

  private SynthesisDefaults() {}

  static void fill(Filling plan) {
    plan.text("measure", "proportion");
    String measure = plan.text("measure");
    List<String> scales = Measures.scales(measure);
    if (scales.size() > 1) {
      plan.text("scale", scales.get(0));
    }
    if (measure.equals("reported-effect")) {
      plan.text("reportedAs", "analysis-scale");
      plan.number("limitsLevel", SynthesisTask.USUAL_LIMITS_LEVEL);
    }
    plan.text("model", "random-effects");
    boolean random = plan.is("model", "random-effects");
    model(plan, random);
    measureOptions(plan, measure);
    if (plan.given().has("subgroup") && random) {
      // Values are placed among studies that differ by a variance of the group's own.
      boolean own = plan.given().has("places") || plan.is("interval", "profile-likelihood");
      plan.text("subgroupVariance", own ? "separate" : "common-when-few");
    }
    if (plan.given().has("subgroup")) {
      plan.text("subgroupBlanks", "left-out");
    }
    if (plan.given().has("moderators")) {
      AskedRegression.fill(plan, moderatorTest(plan));
    }
    RobustPart.fill(plan);
    SmallStudyDefaults.fill(plan);
    plan.flag("influence");
  }

  private static String moderatorTest(Filling plan) {
    if (plan.is("model", "three-level")) {
      return plan.text("interval");
    }
    if (NetworkModel.asked(plan.full())) {
      return NetworkModel.moderatorTest(plan);
    }
    if (ExactModels.asked(plan.full())) {
      return ExactModels.MODERATORS_BY_STUDENT_T;
    }
    return plan.is("model", "random-effects") ? "hartung-knapp" : "normal";
  }

  private static void model(Filling plan, boolean random) {
    if (random || plan.is("model", "three-level")) {
      plan.text("betweenStudyVariance", "restricted-maximum-likelihood");
    }
    if (plan.is("model", "three-level") && !plan.given().has("moderators")) {
      plan.text("predictionInterval", "unknown-spread");
    }
    if (plan.is("model", "common-effect")) {
      plan.text("pooling", "inverse-variance");
    }
    if (ExactModels.asked(plan.full())) {
      ExactModels.fill(plan);
    }
    String without = plan.is("model", "three-level") ? "t-clusters" : "normal";
    plan.text("interval", random ? MeanIntervals.usual().name() : without);
    if (random) {
      plan.text("predictionInterval", "t-k-minus-2");
      if (!plan.is("predictionInterval", "unknown-spread")) {
        plan.text("predictionStandardError", "sum-of-weights");
      }
      plan.text("tauSquaredInterval", "q-profile");
    }
    if (NetworkModel.asked(plan.full())) {
      NetworkModel.fill(plan);
    }
    if (plan.is("model", "bayesian")) {
      PriorReader.fill(plan);
    }
  }

  private static void measureOptions(Filling plan, String measure) {
    if (usesContinuityCorrection(plan.full())) {
      plan.full()
          .set(
              "continuityCorrection",
              continuityCorrection(plan.given().path("continuityCorrection")));
    }
    if (comparesCounts(plan.full())) {
      plan.text("uninformativeStudies", "leave-out");
    }
    if (measure.equals("standardised-mean-difference")) {
      plan.text("smallSampleCorrection", "exact");
      plan.text("standardisedVariance", "corrected-effect");
    }
    if (plan.is("scale", "double-arcsine") && !plan.given().has("backTransformN")) {
      plan.full().put("backTransformN", "harmonic-mean");
    }
  }

  /** A continuity correction with what it leaves out filled in. */
  public static ObjectNode continuityCorrection(JsonNode asked) {
    ObjectNode correction = JsonNodeFactory.instance.objectNode();
    correction.set(
        "amount",
        asked.has("amount") ? asked.get("amount") : JsonNodeFactory.instance.numberNode(0.5));
    correction.put("tables", asked.path("tables").asText("with-an-empty-cell"));
    return correction;
  }

  /** Whether a study can say nothing of the measure because all, or none, had the event. */
  public static boolean comparesCounts(ObjectNode full) {
    return OF_TWO_GROUPS.contains(full.path("measure").asText());
  }

  /** Whether anything is ever added to empty cells, or a study left out for them. */
  public static boolean usesContinuityCorrection(ObjectNode full) {
    if (ExactModels.isNetwork(full)) {
      return false;
    }
    String scale = ExactModels.areCounts(full) ? "" : full.path("scale").asText();
    return switch (full.path("measure").asText()) {
      case "proportion" -> scale.equals("logit") || scale.equals("log");
      case "incidence-rate" -> scale.equals("log");
      default -> comparesCounts(full);
    };
  }
}
