package gapwise.analysis.plan;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;

/** A checked plan as settings. Immutable. */
public interface Plan {
  /** What every plan has. */
  PlanHead head();

  /** Runs the plan. */
  Result runOn(DataTable table);
}
