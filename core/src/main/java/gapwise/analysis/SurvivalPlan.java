package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Curves from the times of patients, one a row.
 *
 * @param json with every default filled in; shared, so not to be changed
 */
record SurvivalPlan(ObjectNode json, Map<String, String> columns, SurvivalQuestions questions)
    implements Plan {
  SurvivalPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }

  static SurvivalPlan of(ObjectNode full, Map<String, String> columns) {
    return new SurvivalPlan(full, columns, SurvivalQuestions.of(full));
  }

  @Override
  public String measure() {
    return "survival";
  }

  @Override
  public Result runOn(DataTable table) {
    return new SurvivalRun(this, table).run();
  }
}
