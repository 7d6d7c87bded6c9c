package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;

/** Finds numbers in a plan that are written larger than a double can hold, such as 1e999. */
final class FiniteNumbers {
  private FiniteNumbers() {}

  /** A problem for each; empty if all can be held. */
  static List<Problem> check(JsonNode plan) {
    List<Problem> problems = new ArrayList<>();
    walk(plan, "", problems);
    return problems;
  }

  private static void walk(JsonNode node, String place, List<Problem> problems) {
    if (node.isNumber() && !Double.isFinite(node.doubleValue())) {
      problems.add(
          new Problem(
              place,
              "number-out-of-range",
              "found a number larger than can be reckoned with; correct it"));
    }
    node.fields()
        .forEachRemaining(
            field ->
                walk(
                    field.getValue(),
                    place.isEmpty() ? field.getKey() : place + "." + field.getKey(),
                    problems));
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        walk(node.get(i), place + "[" + i + "]", problems);
      }
    }
  }
}
