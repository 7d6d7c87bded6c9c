package gapwise.analysis.curves;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Filling;
import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.plan.Task;
import gapwise.problem.Problems;

/** The task {@code survival}. */
public final class SurvivalTask implements Task {
  @Override
  public String word() {
    return "survival";
  }

  @Override
  public void fill(Filling plan) {
    // Nothing it asks has a default.
  }

  @Override
  public void check(ObjectNode full, Problems problems) {
    CurveRules.check(full, problems);
  }

  @Override
  public Plan read(ObjectNode full) {
    return new SurvivalPlan(PlanHead.of(full), SurvivalQuestions.of(full));
  }
}
