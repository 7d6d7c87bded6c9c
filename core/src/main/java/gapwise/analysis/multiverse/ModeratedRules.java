package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.ExactModels;
import gapwise.effect.Measures;
import gapwise.problem.Problems;
import java.util.List;

/** What a multiverse of a regression may not ask, and what belongs to one alone. */
final class ModeratedRules {
  private final ObjectNode plan;
  private final JsonNode vary;
  private final Problems problems;

  private ModeratedRules(ObjectNode plan, Problems problems) {
    this.plan = plan;
    this.vary = plan.get("vary");
    this.problems = problems;
  }

  /** Notes what is wrong with a plan whose defaults are filled in. */
  static void check(ObjectNode plan, Problems problems) {
    ModeratedRules rules = new ModeratedRules(plan, problems);
    if (plan.has("moderators")) {
      rules.about();
      rules.models();
      rules.tests();
      rules.scales();
    } else {
      rules.withoutModerators();
    }
  }

  private void about() {
    JsonNode about = plan.path("about");
    if (about.isMissingNode()) {
      problems.add(
          "about",
          "missing-field",
          "a regression tells several things, of which a multiverse is made of one; name it: {'term':"
              + " ...}, {'at': {...}} for a mean, or {'at': {...}, 'against': {...}} for a difference"
              + " of two means");
    } else if (about.has("term") == about.has("at")) {
      problems.add(
          "about",
          "one-of-two",
          "give either 'term' or 'at', the latter with 'against' for a difference of two means");
    } else if (about.has("term") && about.has("against")) {
      problems.add(
          "about.against",
          "not-with-this-field",
          "'against' goes with 'at', the place of the first mean; remove 'term'");
    }
  }

  private void models() {
    String model = plan.path("model").asText();
    if (!ModeratorTests.hasModel(model)) {
      problems.add("model", "model-not-for-task", notVaried(model));
    }
    List<String> models = PlanHead.texts(vary.path("model"));
    for (int i = 0; i < models.size(); i++) {
      if (!ModeratorTests.hasModel(models.get(i))) {
        problems.add("vary.model[" + i + "]", "model-not-for-task", notVaried(models.get(i)));
      }
    }
    if (models.contains("common-effect")
        && !plan.path("pooling").asText("inverse-variance").equals("inverse-variance")) {
      problems.add(
          "pooling",
          "not-with-moderators",
          "moderators explain effects weighed by their variances; take 'inverse-variance'");
    }
  }

  private static String notVaried(String model) {
    return "'" + model + "' is not varied with moderators, take one of " + ModeratorTests.models();
  }

  private void tests() {
    List<String> models = PlanHead.texts(vary.path("model"));
    List<String> tests = PlanHead.texts(vary.path("moderatorTest"));
    for (int i = 0; i < tests.size(); i++) {
      String test = tests.get(i);
      if (models.stream().noneMatch(model -> ModeratorTests.has(model, test))) {
        problems.add(
            "vary.moderatorTest[" + i + "]",
            "interval-not-for-model",
            "none of the models " + models + " has the test '" + test + "'");
      }
    }
    for (String model : models) {
      List<String> own = ModeratorTests.of(model);
      if (!own.isEmpty() && own.stream().noneMatch(tests::contains)) {
        problems.add(
            "vary.moderatorTest",
            "missing-value",
            "no test for the model '" + model + "', which has " + own + "; add one of them");
      }
    }
    for (String field : List.of("interval", "exactInterval")) {
      if (vary.has(field)) {
        problems.add(
            "vary." + field,
            "field-not-for-task",
            "limits of a regression are made by 'moderatorTest' and 'robustVariance'; remove '"
                + field
                + "'");
      }
    }
    if (vary.has("robustVariance") && !plan.has("cluster")) {
      problems.add(
          "cluster",
          "missing-field",
          "a robust variance allows for clusters; name their column in 'cluster'");
    }
  }

  /** A coefficient, or a difference of two means, means something else on each scale. */
  private void scales() {
    if (!VaryDefaults.isDifference(plan)) {
      return;
    }
    if (vary.path("scale").size() > 1) {
      problems.add(
          "vary.scale",
          "scale-not-for-task",
          "a coefficient or a difference of two means has another unit on each scale, so that they"
              + " cannot be set side by side; name one scale, or ask for a mean by 'about': {'at':"
              + " ...}");
    }
    String usual = Measures.scales(plan.path("measure").asText()).get(0);
    String scale = vary.path("scale").path(0).asText(usual);
    if (ExactModels.take(plan.path("measure").asText())
        && PlanHead.texts(vary.path("model")).contains("exact-likelihood")
        && !scale.equals(usual)) {
      problems.add(
          "vary.model",
          "scale-not-for-model",
          "the exact likelihood is on the scale '"
              + usual
              + "' and cannot stand beside coefficients or differences on '"
              + scale
              + "'; name one of the two");
    }
  }

  private void withoutModerators() {
    for (String field : List.of("moderatorTest", "robustVariance")) {
      if (vary.has(field)) {
        problems.add(
            "vary." + field,
            "field-not-for-task",
            "'" + field + "' is of a regression; name 'moderators' or remove it");
      }
    }
    if (plan.has("about")) {
      problems.add(
          "about",
          "field-not-for-task",
          "'about' names what of a regression is told; name 'moderators' or remove it");
    }
  }
}
