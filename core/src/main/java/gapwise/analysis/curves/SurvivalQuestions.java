package gapwise.analysis.curves;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a plan asks of survival curves, whichever way their patients' times came.
 *
 * @param level of intervals, above 0 and below 1
 * @param horizon of restricted means, above 0
 * @param survivalAt times at which survival is asked for
 * @param compare which group is set against which
 * @param pooled whether the curves are pooled
 */
record SurvivalQuestions(
    double level,
    OptionalDouble horizon,
    List<Double> survivalAt,
    Optional<Compare> compare,
    Optional<Pool> pooled) {
  SurvivalQuestions {
    survivalAt = List.copyOf(survivalAt);
  }

  /** One group against another. */
  record Compare(String group, String against) {}

  /**
   * A pooled curve.
   *
   * @param groups to be pooled; empty for all
   * @param times at which it is told; empty for times chosen from the data
   */
  record Pool(List<String> groups, List<Double> times) {
    Pool {
      groups = List.copyOf(groups);
      times = List.copyOf(times);
    }
  }

  static SurvivalQuestions of(ObjectNode full) {
    JsonNode compare = full.path("compare");
    JsonNode pooled = full.path("pooledCurve");
    List<String> groups = new ArrayList<>();
    pooled.path("groups").forEach(group -> groups.add(group.asText()));
    return new SurvivalQuestions(
        full.get("level").asDouble(),
        full.has("horizon")
            ? OptionalDouble.of(full.get("horizon").asDouble())
            : OptionalDouble.empty(),
        numbers(full.path("survivalAt")),
        compare.isObject()
            ? Optional.of(
                new Compare(compare.get("group").asText(), compare.get("against").asText()))
            : Optional.empty(),
        pooled.isObject()
            ? Optional.of(new Pool(groups, numbers(pooled.path("times"))))
            : Optional.empty());
  }

  private static List<Double> numbers(JsonNode list) {
    List<Double> numbers = new ArrayList<>();
    list.forEach(number -> numbers.add(number.asDouble()));
    return numbers;
  }
}
