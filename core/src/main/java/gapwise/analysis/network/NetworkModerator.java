package gapwise.analysis.network;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A number of studies along which the comparisons with the reference may change, as a plan asks.
 *
 * @param column that holds it
 * @param centre where effects are told first; empty for the mean over the studies
 * @param studentT whether limits are by Student's t, else normal
 * @param values where effects are told as well
 */
record NetworkModerator(
    String column, OptionalDouble centre, boolean studentT, List<Double> values) {
  /** Limits and tests by Student's t. */
  static final String STUDENT_T = "t-k-minus-p";

  private static final List<String> TESTS = List.of(STUDENT_T, "normal");

  NetworkModerator {
    values = List.copyOf(values);
  }

  /** What a checked plan asks; empty without moderators. */
  static Optional<NetworkModerator> of(ObjectNode full) {
    if (!full.has("moderators")) {
      return Optional.empty();
    }
    JsonNode one = full.get("moderators").get(0);
    String column = column(one);
    List<Double> values = new ArrayList<>();
    full.path("predictions").forEach(at -> values.add(at.get(column).asDouble()));
    return Optional.of(
        new NetworkModerator(
            column,
            one.has("centre")
                ? OptionalDouble.of(one.get("centre").asDouble())
                : OptionalDouble.empty(),
            full.path("moderatorTest").asText().equals(STUDENT_T),
            values));
  }

  private static String column(JsonNode moderator) {
    return moderator.path("column").asText(moderator.asText());
  }

  /** Notes what a network's moderator cannot be. */
  static void check(ObjectNode plan, Problems problems) {
    JsonNode moderators = plan.path("moderators");
    JsonNode one = moderators.path(0);
    if (moderators.size() > 1 || one.has("product") || one.has("spline") || one.has("reference")) {
      problems.add(
          "moderators",
          "part-not-for-model",
          "a network takes one moderator, a column of numbers, with a centre or without; name one"
              + " column");
      return;
    }
    String test = plan.path("moderatorTest").asText(STUDENT_T);
    if (!moderators.isEmpty() && !TESTS.contains(test)) {
      problems.add(
          "moderatorTest",
          "interval-not-for-model",
          "'" + test + "' is not made for a network, which has " + TESTS);
    }
    JsonNode predictions = plan.path("predictions");
    for (int i = 0; i < predictions.size() && !moderators.isEmpty(); i++) {
      checkPrediction(column(one), predictions.get(i), "predictions[" + i + "]", problems);
    }
  }

  private static void checkPrediction(
      String column, JsonNode prediction, String where, Problems problems) {
    if (prediction.size() != 1 || !prediction.has(column)) {
      problems.add(
          where,
          "part-not-for-model",
          "a network is told at a value of its one moderator; say {\"" + column + "\": number}");
    } else if (!prediction.get(column).isNumber()) {
      problems.add(
          where + "." + column,
          "not-a-number",
          "found '"
              + prediction.get(column).asText()
              + "', expected a number for '"
              + column
              + "'");
    }
  }
}
