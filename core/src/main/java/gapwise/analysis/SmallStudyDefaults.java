package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Fills in what a plan leaves out about small-study effects. */
final class SmallStudyDefaults {
  private SmallStudyDefaults() {}

  static void fill(ObjectNode given, ObjectNode full) {
    if (!given.has("smallStudyEffects")) {
      return;
    }
    ArrayNode tests = full.putArray("smallStudyEffects");
    for (JsonNode asked : given.get("smallStudyEffects")) {
      if (asked.isObject() || asked.asText().equals("trim-and-fill")) {
        JsonNode settings = asked.path("trim-and-fill");
        tests
            .addObject()
            .putObject("trim-and-fill")
            .put("estimator", settings.path("estimator").asText("L0"))
            .put("side", settings.path("side").asText("left"))
            .put("model", settings.path("model").asText(modelOf(full)));
      } else {
        tests.add(asked);
      }
    }
  }

  private static String modelOf(ObjectNode full) {
    String model = full.path("model").asText();
    return model.equals("common-effect") ? model : "random-effects";
  }
}
