package gapwise.analysis.trial;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.synthesis.trial.Demands;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How many patients a trial of two arms needs to find a difference.
 *
 * @param head its columns those of the groups that tell how widely patients differ, if a source is
 *     named
 * @param comparator what the comparator gives, as people read it
 * @param intervention what the intervention would give
 * @param logs whether logarithms are compared
 * @param power above 0 and below 1
 * @param standardDeviation within arms, if the plan says it
 * @param groups how groups that tell it are read, if the plan names them
 */
record TrialPlan(
    PlanHead head,
    double comparator,
    double intervention,
    boolean logs,
    double power,
    OptionalDouble standardDeviation,
    Optional<PoolingPlan> groups)
    implements Plan {

  /** Whether the outcome is an event; else it is a measurement. */
  boolean ofProportions() {
    return head.measure().equals("proportion");
  }

  Demands demands() {
    return new Demands(1 - head.level(), power);
  }

  @Override
  public Result runOn(DataTable table) {
    return new TrialRun(this, table).run();
  }
}
