package gapwise.analysis.patients;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Patients one by one and summaries of arms in one likelihood.
 *
 * @param head its columns those of the patients
 * @param summaryColumns of the arms
 * @param logs whether logs of measurements are taken
 * @param restricted whether the likelihood is the restricted one
 * @param centre the moderator at which the intercept is told
 * @param points of the quadrature, for events; empty if the plan does not say
 */
record PatientsPlan(
    PlanHead head,
    Map<String, String> summaryColumns,
    boolean logs,
    boolean restricted,
    double centre,
    OptionalInt points)
    implements Plan {
  PatientsPlan {
    summaryColumns = Collections.unmodifiableMap(new LinkedHashMap<>(summaryColumns));
  }

  /** Whether the outcome is an event; else it is a measurement. */
  boolean events() {
    return head.measure().equals("proportion");
  }

  @Override
  public Result runOn(DataTable table) {
    return new PatientsRun(this, table).run();
  }
}
