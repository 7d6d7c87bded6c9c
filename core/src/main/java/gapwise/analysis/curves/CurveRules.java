package gapwise.analysis.curves;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problems;
import java.util.Map;

/** What a plan of the tasks {@code reconstruct-curve} and {@code survival} may not ask. */
final class CurveRules {
  /** Far above any published curve; every patient is told apart. */
  private static final int MOST_PATIENTS = 1_000_000;

  private final ObjectNode plan;
  private final Problems problems;

  private CurveRules(ObjectNode plan, Problems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  static void check(ObjectNode plan, Problems problems) {
    CurveRules rules = new CurveRules(plan, problems);
    JsonNode atRisk = plan.path("numbersAtRisk");
    if (atRisk.isObject() && atRisk.has("table") == atRisk.has("rows")) {
      rules.problems.add(
          "numbersAtRisk",
          "wrong-source",
          "expected exactly one of \"table\" (a file) and \"rows\" (a list)");
    }
    if (plan.has("groups")) {
      double all = 0;
      for (JsonNode group : plan.get("groups")) {
        all += group.get("patients").asDouble();
      }
      Work.require(
          Limit.ITEMS,
          (long) all,
          "groups",
          "Every patient is put together again and told; rebuild fewer curves at a time.");
      plan.get("groups").fields().forEachRemaining(rules::group);
      rules.named();
    }
    rules.rising(plan.path("pooledCurve").path("times"));
    rules.different(plan.path("compare"));
  }

  private void named() {
    JsonNode compare = plan.path("compare");
    known("compare.group", compare.path("group"));
    known("compare.against", compare.path("against"));
    JsonNode pooled = plan.path("pooledCurve").path("groups");
    for (int i = 0; i < pooled.size(); i++) {
      known("pooledCurve.groups[" + i + "]", pooled.get(i));
    }
  }

  private void rising(JsonNode times) {
    for (int i = 1; i < times.size(); i++) {
      if (times.get(i).asDouble() <= times.get(i - 1).asDouble()) {
        problems.add(
            "pooledCurve.times[" + i + "]",
            "times-not-sorted",
            "found "
                + times.get(i)
                + " after "
                + times.get(i - 1)
                + "; each time once, in their order");
      }
    }
  }

  private void different(JsonNode compare) {
    if (compare.isObject() && compare.get("group").equals(compare.get("against"))) {
      problems.add(
          "compare.against",
          "same-group",
          "a group cannot be set against itself; name the other one");
    }
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
