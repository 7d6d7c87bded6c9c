package gapwise.analysis.multiverse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.pooling.ExactModels;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a multiverse of the right form still may not ask. */
final class MultiverseRules {
  /** Models whose result is one pooled value worked out from all rows at once. */
  private static final List<String> MODELS =
      List.of("random-effects", "common-effect", "exact-likelihood", "bayesian");

  /** Parts of a synthesis that a multiverse has no use for. */
  private static final List<String> OTHER_PARTS =
      List.of(
          "places",
          "subgroup",
          "robustVariance",
          "predictions",
          "permutationTest",
          "smallStudyEffects",
          "priorSensitivity",
          "probabilities",
          "influence",
          "cumulativeBy");

  private final ObjectNode plan;
  private final Problems problems = new Problems();

  private MultiverseRules(ObjectNode plan) {
    this.plan = plan;
  }

  /** Notes what is wrong with a plan whose defaults are filled in. */
  static void check(ObjectNode plan, Problems problems) {
    MultiverseRules rules = new MultiverseRules(plan);
    rules.base();
    ModeratedRules.check(plan, rules.problems);
    rules.columns();
    rules.missingSpread();
    if (rules.problems.isEmpty()) {
      rules.variants();
    }
    problems.addAll(rules.problems.list().stream().distinct().toList());
  }

  private void base() {
    String model = plan.path("model").asText();
    boolean ofEffects =
        model.equals("bayesian")
            && ExactModels.take(plan.path("measure").asText())
            && !ExactModels.areCounts(plan);
    if (!plan.has("moderators") && (!MODELS.contains(model) || ofEffects)) {
      problems.add(
          "model",
          "model-not-for-task",
          "a multiverse is made of one pooled value after another; '"
              + model
              + "' is not varied, take one of "
              + MODELS
              + (ofEffects ? ", 'bayesian' with 'likelihood': 'exact'" : ""));
    }
    for (String field : OTHER_PARTS) {
      JsonNode asked = plan.path(field);
      boolean used = field.equals("robustVariance") && plan.has("moderators");
      if (plan.has(field) && !used && !(asked.isBoolean() && !asked.asBoolean())) {
        problems.add(
            field,
            "field-not-for-task",
            plan.has("moderators")
                ? "a multiverse of a regression is told for what 'about' names only; remove '"
                    + field
                    + "'"
                : "a multiverse is told for the pooled value only; remove '"
                    + field
                    + "', or narrow the rows by vary.subsets");
      }
    }
  }

  private void missingSpread() {
    if (plan.get("vary").has("missingSpread") && !plan.path("measure").asText().equals("mean")) {
      problems.add(
          "vary.missingSpread",
          "field-not-for-measure",
          "a standard deviation is borrowed for means of single groups alone; remove"
              + " 'missingSpread', or ask it of 'mean'");
    }
  }

  private void columns() {
    Set<String> seen = new HashSet<>();
    JsonNode subsets = plan.get("vary").path("subsets");
    for (int i = 0; i < subsets.size(); i++) {
      JsonNode one = subsets.get(i);
      String where = "vary.subsets[" + i + "]";
      if (!seen.add(one.get("column").asText())) {
        problems.add(
            where + ".column",
            "duplicate-value",
            "found '" + one.get("column").asText() + "' twice; put all its subsets into one entry");
      }
      if (one.size() < 2) {
        problems.add(
            where,
            "missing-field",
            "nothing is narrowed; give 'only', 'without', 'atLeast' or 'atMost'");
      }
    }
  }

  /** Each model, scale, estimator and interval must make a plan that could be run alone. */
  private void variants() {
    JsonNode vary = plan.get("vary");
    for (String field : List.of("model", "scale", "betweenStudyVariance", "interval")) {
      for (int i = 0; i < vary.path(field).size(); i++) {
        String word = vary.get(field).get(i).asText();
        for (Problem problem : variant(field, word)) {
          boolean here = problem.where().equals(field);
          problems.add(
              here ? "vary." + field + "[" + i + "]" : problem.where(),
              problem.code(),
              problem.message());
        }
      }
    }
  }

  private List<Problem> variant(String field, String word) {
    boolean random = !field.equals("model") && !field.equals("scale");
    if (field.equals("model") && !word.equals("random-effects")) {
      return MultiverseTask.problems(
          plan, MultiverseTask.ofModel(word, plan.path("measure").asText()));
    }
    if (field.equals("model") || random) {
      ObjectNode other = Filling.copy(plan);
      other.remove(List.of("pooling", "interval"));
      if (!plan.path("model").asText().equals("random-effects")) {
        other.remove("moderatorTest"); // each model has its own words there
      }
      other.put("model", "random-effects");
      return MultiverseTask.problems(other, Map.of(field, word));
    }
    return MultiverseTask.problems(plan, Map.of(field, word));
  }
}
