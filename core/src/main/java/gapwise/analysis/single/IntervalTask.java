package gapwise.analysis.single;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problems;
import java.util.List;

/** The task {@code interval}. */
public final class IntervalTask implements Task {
  @Override
  public String word() {
    return "interval";
  }

  @Override
  public void fill(Filling plan) {
    plan.text("measure", "proportion");
    plan.flag("pooledCounts");
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    String measure = full.get("measure").asText();
    boolean rate = measure.equals("incidence-rate");
    List<String> methods = PlanHead.texts(full.get("methods"));
    for (int i = 0; i < methods.size(); i++) {
      if (methods.get(i).equals("exact-poisson") != rate) {
        problems.add(
            "methods[" + i + "]",
            "method-not-for-measure",
            "'" + methods.get(i) + "' makes no interval for the measure '" + measure + "'");
      }
    }
  }

  @Override
  public Plan read(ObjectNode full) {
    return new IntervalPlan(
        PlanHead.of(full),
        PlanHead.texts(full.get("methods")),
        full.get("pooledCounts").asBoolean());
  }
}
