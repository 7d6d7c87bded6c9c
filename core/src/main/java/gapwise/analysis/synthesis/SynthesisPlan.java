package gapwise.analysis.synthesis;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import java.util.List;

/**
 * Effects of studies pooled.
 *
 * @param pooling how they are read and pooled
 * @param parts what else is asked
 * @param unused what the plan says without bearing
 */
record SynthesisPlan(PoolingPlan pooling, AskedParts parts, List<Result.Warning> unused)
    implements Plan {
  SynthesisPlan {
    unused = List.copyOf(unused);
  }

  @Override
  public PlanHead head() {
    return pooling.head();
  }

  @Override
  public Result runOn(DataTable table) {
    return SynthesisRun.of(this, pooling.how(), table);
  }
}
