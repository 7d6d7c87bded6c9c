package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.List;
import java.util.Map;

/** What a plan of the task {@code reconstruct-curve} may not ask. */
final class CurveRules {
  /** Far above any published curve; every patient is told apart. */
  private static final int MOST_PATIENTS = 1_000_000;

  private final ObjectNode plan;
  private final Problems problems = new Problems();

  private CurveRules(ObjectNode plan) {
    this.plan = plan;
  }

  static List<Problem> check(ObjectNode plan) {
    CurveRules rules = new CurveRules(plan);
    JsonNode atRisk = plan.path("numbersAtRisk");
    if (atRisk.isObject() && atRisk.has("table") == atRisk.has("rows")) {
      rules.problems.add(
          "numbersAtRisk",
          "wrong-source",
          "expected exactly one of \"table\" (a file) and \"rows\" (a list)");
    }
    plan.get("groups").fields().forEachRemaining(rules::group);
    JsonNode compare = plan.path("compare");
    rules.known("compare.group", compare.path("group"));
    rules.known("compare.against", compare.path("against"));
    JsonNode pooled = plan.path("pooledCurve").path("groups");
    for (int i = 0; i < pooled.size(); i++) {
      rules.known("pooledCurve.groups[" + i + "]", pooled.get(i));
    }
    return rules.problems.list();
  }

  private void group(Map.Entry<String, JsonNode> group) {
    String where = "groups." + group.getKey();
    double patients = group.getValue().get("patients").asDouble();
    double events = group.getValue().path("events").asDouble();
    if (patients > MOST_PATIENTS) {
      problems.add(
          where + ".patients",
          "out-of-range",
          "found " + patients + ", expected at most " + MOST_PATIENTS);
    }
    if (events > patients) {
      problems.add(
          where + ".events",
          "events-exceed-total",
          "found more events than patients; correct one of them");
    }
  }

  private void known(String where, JsonNode name) {
    if (!name.isMissingNode() && !plan.get("groups").has(name.asText())) {
      problems.add(
          where,
          "unknown-group",
          "'" + name.asText() + "' is none of the plan's groups; correct its name or add it there");
    }
  }
}
