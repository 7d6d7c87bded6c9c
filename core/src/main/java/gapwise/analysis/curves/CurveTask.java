package gapwise.analysis.curves;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problems;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The task {@code reconstruct-curve}. */
public final class CurveTask implements Task {
  @Override
  public String word() {
    return "reconstruct-curve";
  }

  @Override
  public void fill(Filling plan) {
    plan.text("as", "event-free");
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    CurveRules.check(full, problems);
  }

  @Override
  public Plan read(ObjectNode full) {
    Map<String, CurvePlan.Reported> groups = new LinkedHashMap<>();
    full.get("groups")
        .fields()
        .forEachRemaining(field -> groups.put(field.getKey(), reported(field.getValue())));
    return new CurvePlan(
        PlanHead.of(full),
        full.get("as").asText().equals("cumulative-events"),
        PlanHead.columns(full.path("numbersAtRisk")),
        groups,
        SurvivalQuestions.of(full));
  }

  private static CurvePlan.Reported reported(JsonNode group) {
    return new CurvePlan.Reported(
        group.get("patients").asInt(),
        group.has("events") ? OptionalInt.of(group.get("events").asInt()) : OptionalInt.empty(),
        group.has("median")
            ? OptionalDouble.of(group.get("median").asDouble())
            : OptionalDouble.empty());
  }
}
