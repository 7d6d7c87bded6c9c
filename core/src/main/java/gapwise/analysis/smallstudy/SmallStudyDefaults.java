package gapwise.analysis.smallstudy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import java.util.List;

/** Fills in what a plan leaves out about small-study effects. */
public final class SmallStudyDefaults {
  /** p of 0.10, 0.05 and 0.01: Peters et al., J Clin Epidemiol 2008;61:991. */
  private static final List<Double> USUAL_CONTOURS = List.of(0.90, 0.95, 0.99);

  private SmallStudyDefaults() {}

  public static void fill(Filling plan) {
    if (plan.given().has("smallStudyEffects")) {
      tests(plan.given(), plan.full());
    }
    if (plan.given().has("funnel") && !plan.given().get("funnel").has("contours")) {
      ArrayNode contours = plan.full().putObject("funnel").putArray("contours");
      if (FunnelPart.hasNoEffect(plan.text("measure"))) {
        USUAL_CONTOURS.forEach(contours::add);
      }
    }
  }

  private static void tests(ObjectNode given, ObjectNode full) {
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
