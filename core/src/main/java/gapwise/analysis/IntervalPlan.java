package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * An interval for each row alone.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param measure {@code proportion} or {@code incidence-rate}
 * @param methods names, in the order asked for
 * @param pooledCounts whether all counts together get an interval too
 * @param level above 0 and below 1
 */
record IntervalPlan(
    ObjectNode json,
    String measure,
    Map<String, String> columns,
    List<String> methods,
    boolean pooledCounts,
    double level)
    implements Plan {
  IntervalPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    methods = List.copyOf(methods);
  }

  @Override
  public Result runOn(DataTable table) {
    return IntervalRun.of(this, table);
  }
}
