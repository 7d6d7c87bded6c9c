package gapwise.analysis.agreement;

import gapwise.analysis.plan.Plan;
import gapwise.analysis.plan.PlanHead;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import java.util.List;

/**
 * How far raters agree.
 *
 * @param statistics {@code kappa}, {@code intraclass-correlation}, {@code limits-of-agreement}
 * @param raters columns in order; for measurements
 * @param categories in order; empty for those in the data by alphabet
 * @param weights of kappa
 * @param multiplier of the limits of agreement
 */
record AgreementPlan(
    PlanHead head,
    List<String> statistics,
    List<String> raters,
    List<String> categories,
    List<AskedWeights> weights,
    double multiplier)
    implements Plan {
  AgreementPlan {
    statistics = List.copyOf(statistics);
    raters = List.copyOf(raters);
    categories = List.copyOf(categories);
    weights = List.copyOf(weights);
  }

  boolean asks(String statistic) {
    return statistics.contains(statistic);
  }

  @Override
  public Result runOn(DataTable table) {
    return new AgreementRun(this, table).run();
  }
}
