package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.effect.MedianConversion;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Means and standard deviations from medians.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param methods in the order asked for
 */
record ConvertPlan(ObjectNode json, Map<String, String> columns, List<MedianConversion> methods)
    implements Plan {
  ConvertPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    methods = List.copyOf(methods);
  }

  @Override
  public String measure() {
    return "convert";
  }

  @Override
  public Result runOn(DataTable table) {
    return ConvertRun.of(this, table);
  }
}
