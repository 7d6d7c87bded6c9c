package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.ExactModels;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problems;
import java.util.List;
import java.util.Set;

/** What a plan with moderators or robust variances may not ask as well. */
public final class ModeratorRules {
  private static final Set<String> MODELS =
      Set.of("random-effects", "common-effect", "three-level");

  private static final int MOST_POINTS = 1000;

  private ModeratorRules() {}

  public static void check(ObjectNode plan, Problems problems) {
    boolean moderators = plan.has("moderators");
    for (String field : List.of("moderators", "robustVariance")) {
      String model = plan.path("model").asText();
      boolean other =
          field.equals("moderators") && (ExactModels.asked(plan) || model.equals("network"));
      if (plan.has(field) && !other && !MODELS.contains(model)) {
        problems.add(
            field,
            "not-with-this-model",
            "'"
                + field
                + "' goes with random effects, a common effect or three levels"
                + (field.equals("moderators") ? ", with an exact likelihood or a network" : "")
                + ", not with '"
                + model
                + "'");
      }
      if (plan.has(field) && plan.path("pooling").asText().equals("mantel-haenszel")) {
        problems.add(
            field,
            "not-with-count-pooling",
            "'" + field + "' needs the effect of each study; take the pooling 'inverse-variance'");
      }
    }
    if (moderators) {
      together(plan, problems);
      if (ExactModels.asked(plan)) {
        ExactModels.checkModerators(plan, problems);
      }
    }
    Work.require(
        Limit.TERMS,
        plan.path("moderators").size() + 1L,
        "moderators",
        "Ask of fewer moderators at a time.");
    points(plan.path("predictions"), problems);
    for (String field : List.of("predictions", "permutationTest")) {
      if (plan.has(field) && !moderators) {
        problems.add(
            "moderators", "missing-field", "'" + field + "' is asked of moderators; name them");
      } else if (plan.has(field) && plan.path("model").asText().equals("three-level")) {
        problems.add(
            field,
            "not-with-this-model",
            "'" + field + "' goes with random effects or a common effect");
      }
    }
  }

  /** The schema takes a curve with a wrong number of points for values of moderators. */
  private static void points(JsonNode predictions, Problems problems) {
    for (int i = 0; i < predictions.size(); i++) {
      JsonNode one = predictions.get(i);
      double points = one.path("points").asDouble(MOST_POINTS);
      boolean curve = one.has("from") && one.has("to");
      if (curve && !(points >= 2 && points <= MOST_POINTS && points == Math.rint(points))) {
        problems.add(
            "predictions[" + i + "].points",
            "out-of-range",
            "found " + one.get("points") + ", expected a whole number from 2 to " + MOST_POINTS);
      }
    }
  }

  private static void together(ObjectNode plan, Problems problems) {
    if (plan.has("subgroup")) {
      problems.add(
          "subgroup",
          "not-with-moderators",
          "groups and moderators are two ways of asking what studies differ in; put the column"
              + " among the moderators, or leave the moderators out");
    }
    if (plan.has("cumulativeBy")) {
      problems.add(
          "cumulativeBy",
          "not-with-moderators",
          "a cumulative order is told of one pooled value, which a plan with moderators has not");
    }
    if (plan.path("smallStudyEffects").size() > 0) {
      problems.add(
          "smallStudyEffects",
          "not-with-moderators",
          "these tests are of one pooled value, which a plan with moderators has not; put the"
              + " standard error among the moderators instead");
    }
  }
}
