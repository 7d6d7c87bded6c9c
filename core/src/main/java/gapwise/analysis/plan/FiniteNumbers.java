package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.Iterator;
import java.util.List;

/** Finds numbers in a plan that are written larger than a double can hold, such as 1e999. */
public final class FiniteNumbers {
  private final Problems problems = new Problems();

  private FiniteNumbers() {}

  /** A problem for each; empty if all can be held. */
  public static List<Problem> check(JsonNode plan) {
    FiniteNumbers search = new FiniteNumbers();
    if (!isFinite(plan)) {
      search.walk(plan, "");
    }
    return search.problems.list();
  }

  /** Places are put into words only where there is something to tell. */
  private static boolean isFinite(JsonNode node) {
    if (node.isNumber()) {
      return Double.isFinite(node.doubleValue());
    }
    for (Iterator<JsonNode> parts = node.elements(); parts.hasNext(); ) {
      if (!isFinite(parts.next())) {
        return false;
      }
    }
    return true;
  }

  private void walk(JsonNode node, String place) {
    if (node.isNumber() && !Double.isFinite(node.doubleValue())) {
      problems.add(
          place,
          "number-out-of-range",
          "found a number larger than can be reckoned with; correct it");
    }
    node.fields()
        .forEachRemaining(
            field ->
                walk(
                    field.getValue(),
                    place.isEmpty() ? field.getKey() : place + "." + field.getKey()));
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        walk(node.get(i), place + "[" + i + "]");
      }
    }
  }
}
