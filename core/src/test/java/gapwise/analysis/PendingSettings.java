package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.function.Predicate;

/** Settings of plans that this version still refuses; a line goes when the setting is done. */
final class PendingSettings {
  private static final List<Predicate<JsonNode>> PENDING =
      List.of(
          plan -> plan.path("model").asText().equals("three-level"),
          plan -> plan.path("model").asText().equals("network"),
          plan -> plan.path("task").asText().equals("reconstruct-curve"),
          plan -> plan.has("moderators"),
          plan -> plan.has("robustVariance"));

  private PendingSettings() {}

  static boolean none(JsonNode plan) {
    return PENDING.stream().noneMatch(pending -> pending.test(plan));
  }
}
