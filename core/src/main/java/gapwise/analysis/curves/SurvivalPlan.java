package gapwise.analysis.curves;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;

/** Curves from the times of patients, one a row. */
record SurvivalPlan(PlanHead head, SurvivalQuestions questions) implements Plan {
  @Override
  public Result runOn(DataTable table) {
    return new SurvivalRun(this, table).run();
  }
}
