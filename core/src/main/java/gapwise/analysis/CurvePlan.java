package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Patients' times put back together from published curves.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param columns of the curve's points
 * @param rising whether the curve shows the share with the event
 * @param atRiskColumns of the numbers at risk
 * @param groups what was reported of each curve, in the plan's order
 */
record CurvePlan(
    ObjectNode json,
    Map<String, String> columns,
    boolean rising,
    Map<String, String> atRiskColumns,
    Map<String, Reported> groups,
    SurvivalQuestions questions)
    implements Plan {
  /**
   * What was reported of one curve.
   *
   * @param patients at its start
   * @param events in all
   * @param median time to the event
   */
  record Reported(int patients, OptionalInt events, OptionalDouble median) {}

  CurvePlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    atRiskColumns = Collections.unmodifiableMap(new LinkedHashMap<>(atRiskColumns));
    groups = Collections.unmodifiableMap(new LinkedHashMap<>(groups));
  }

  static CurvePlan of(ObjectNode full, Map<String, String> columns) {
    Map<String, String> atRisk = new LinkedHashMap<>();
    full.path("numbersAtRisk")
        .path("columns")
        .fields()
        .forEachRemaining(field -> atRisk.put(field.getKey(), field.getValue().asText()));
    Map<String, Reported> groups = new LinkedHashMap<>();
    full.get("groups")
        .fields()
        .forEachRemaining(field -> groups.put(field.getKey(), reported(field.getValue())));
    return new CurvePlan(
        full,
        columns,
        full.get("as").asText().equals("cumulative-events"),
        atRisk,
        groups,
        SurvivalQuestions.of(full));
  }

  private static Reported reported(JsonNode group) {
    return new Reported(
        group.get("patients").asInt(),
        group.has("events") ? OptionalInt.of(group.get("events").asInt()) : OptionalInt.empty(),
        group.has("median")
            ? OptionalDouble.of(group.get("median").asDouble())
            : OptionalDouble.empty());
  }

  @Override
  public String measure() {
    return "reconstruct-curve";
  }

  @Override
  public Result runOn(DataTable table) {
    return new CurveRun(this, table).run();
  }
}
