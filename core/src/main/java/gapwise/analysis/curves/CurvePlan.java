package gapwise.analysis.curves;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Patients' times put back together from published curves.
 *
 * @param head its columns those of the curve's points
 * @param rising whether the curve shows the share with the event
 * @param atRiskColumns of the numbers at risk
 * @param groups what was reported of each curve, in the plan's order
 */
record CurvePlan(
    PlanHead head,
    boolean rising,
    Map<String, String> atRiskColumns,
    Map<String, Reported> groups,
    SurvivalQuestions questions)
    implements Plan {
  CurvePlan {
    atRiskColumns = Collections.unmodifiableMap(new LinkedHashMap<>(atRiskColumns));
    groups = Collections.unmodifiableMap(new LinkedHashMap<>(groups));
  }

  /**
   * What was reported of one curve.
   *
   * @param patients at its start
   * @param events in all
   * @param median time to the event
   */
  record Reported(int patients, OptionalInt events, OptionalDouble median) {}

  @Override
  public Result runOn(DataTable table) {
    return new CurveRun(this, table).run();
  }
}
