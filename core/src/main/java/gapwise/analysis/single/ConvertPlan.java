package gapwise.analysis.single;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.MedianConversion;
import java.util.List;

/**
 * Means and standard deviations from medians.
 *
 * @param methods in the order asked for
 */
record ConvertPlan(PlanHead head, List<MedianConversion> methods) implements Plan {
  ConvertPlan {
    methods = List.copyOf(methods);
  }

  @Override
  public Result runOn(DataTable table) {
    return ConvertRun.of(this, table);
  }
}
