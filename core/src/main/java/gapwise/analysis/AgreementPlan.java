package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How far raters agree.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param statistics {@code kappa}, {@code intraclass-correlation}, {@code limits-of-agreement}
 * @param raters columns in order; for measurements
 * @param categories in order; empty for those in the data by alphabet
 * @param multiplier of the limits of agreement
 * @param level above 0 and below 1
 */
record AgreementPlan(
    ObjectNode json,
    Map<String, String> columns,
    List<String> statistics,
    List<String> raters,
    List<String> categories,
    double multiplier,
    double level)
    implements Plan {
  AgreementPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    statistics = List.copyOf(statistics);
    raters = List.copyOf(raters);
    categories = List.copyOf(categories);
  }

  @Override
  public String measure() {
    return "agreement";
  }

  boolean asks(String statistic) {
    return statistics.contains(statistic);
  }

  @Override
  public Result runOn(DataTable table) {
    return new AgreementRun(this, table).run();
  }
}
