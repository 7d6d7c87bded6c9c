package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.Measures;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One body of evidence analysed in every way asked for.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param base the synthesis as the plan itself would have it
 * @param vary what is varied
 */
record MultiversePlan(ObjectNode json, SynthesisPlan base, Vary vary) implements Plan {
  /** Fields of a plan that a synthesis does not have. */
  private static final List<String> OWN_FIELDS = List.of("vary", "threshold", "list");

  @Override
  public String measure() {
    return base.measure();
  }

  @Override
  public Map<String, String> columns() {
    return Collections.unmodifiableMap(new LinkedHashMap<>(base.columns()));
  }

  @Override
  public Result runOn(DataTable table) {
    return MultiverseRun.of(this, base.how(), table);
  }

  /** The plan of one of the analyses: the synthesis with some of its fields set anew. */
  SynthesisPlan with(Map<String, ?> fields) {
    return PlanReader.synthesis(synthesis(json, fields));
  }

  /**
   * The fields that make a synthesis one of a model without an estimator of tau squared. An exact
   * likelihood has only the usual scale, whatever the plan's.
   */
  static Map<String, String> ofModel(String model, String measure) {
    Map<String, String> fields = new LinkedHashMap<>(Map.of("interval", "normal"));
    fields.put("model", model);
    List<String> scales = Measures.scales(measure);
    if (model.equals("exact-likelihood") && scales.size() > 1) {
      fields.put("scale", scales.get(0));
    }
    return fields;
  }

  /** The synthesis in a plan of this task, with some of its fields set anew. */
  static ObjectNode synthesis(ObjectNode json, Map<String, ?> fields) {
    // What is varied can be long; the fields set here are those of this copy, and their contents
    // are copied with the defaults.
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.setAll(json);
    plan.remove(OWN_FIELDS);
    plan.put("task", "synthesis");
    fields.forEach(
        (field, value) -> {
          if (value instanceof JsonNode rule) {
            plan.set(field, rule);
          } else {
            plan.put(field, (String) value);
          }
        });
    return PlanDefaults.fill(plan);
  }
}
