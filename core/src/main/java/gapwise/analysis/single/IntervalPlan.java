package gapwise.analysis.single;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import java.util.List;

/**
 * An interval for each row alone.
 *
 * @param head its measure {@code proportion} or {@code incidence-rate}
 * @param methods names, in the order asked for
 * @param pooledCounts whether all counts together get an interval too
 */
record IntervalPlan(PlanHead head, List<String> methods, boolean pooledCounts) implements Plan {
  IntervalPlan {
    methods = List.copyOf(methods);
  }

  boolean ofRates() {
    return head.measure().equals("incidence-rate");
  }

  @Override
  public Result runOn(DataTable table) {
    return IntervalRun.of(this, table);
  }
}
