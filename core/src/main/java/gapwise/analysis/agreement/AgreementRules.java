package gapwise.analysis.agreement;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problems;
import java.util.HashSet;
import java.util.Set;

/** What a plan of the task {@code agreement} may not ask. */
final class AgreementRules {
  private final ObjectNode plan;
  private final Problems problems;

  private AgreementRules(ObjectNode plan, Problems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  static void check(ObjectNode plan, Problems problems) {
    AgreementRules rules = new AgreementRules(plan, problems);
    Set<String> asked = new HashSet<>();
    plan.get("statistics").forEach(one -> asked.add(one.asText()));
    int raters = plan.path("raters").size();
    if (asked.contains("limits-of-agreement") && raters != 2) {
      rules.raters("limits of agreement need exactly two raters, found " + raters);
    } else if (asked.contains("intraclass-correlation") && raters < 2) {
      rules.raters("an intraclass correlation needs at least two raters, found " + raters);
    }
    if (asked.contains("kappa")) {
      rules.weights();
    }
  }

  private void raters(String message) {
    problems.add("raters", "wrong-number-of-raters", message + "; name their columns");
  }

  private void weights() {
    int categories = plan.path("categories").size();
    Set<JsonNode> distinct = new HashSet<>();
    plan.path("categories").forEach(distinct::add);
    if (distinct.size() < categories) {
      problems.add("categories", "category-twice", "a category stands twice; name each once");
    }
    for (int i = 0; i < plan.get("weights").size(); i++) {
      JsonNode one = plan.get("weights").get(i);
      if (!one.asText().equals("none") && categories == 0) {
        problems.add(
            "categories",
            "missing-field",
            "weights by distance need the categories in their order; add them");
        return;
      }
      if (one.isObject()) {
        table("weights[" + i + "].disagreement", one.get("disagreement"), categories);
      }
    }
  }

  private void table(String where, JsonNode table, int categories) {
    boolean square = table != null && table.size() == categories;
    double largest = 0;
    boolean diagonal = true;
    for (int i = 0; square && i < categories; i++) {
      square = table.get(i).size() == categories;
      for (int j = 0; square && j < categories; j++) {
        largest = Math.max(largest, table.get(i).get(j).asDouble());
        diagonal &= i != j || table.get(i).get(j).asDouble() == 0;
      }
    }
    if (!square || largest == 0 || !diagonal) {
      problems.add(
          where,
          "wrong-table",
          "expected "
              + categories
              + " rows of "
              + categories
              + " values, 0 where both agree and above 0 somewhere else");
    }
  }
}
