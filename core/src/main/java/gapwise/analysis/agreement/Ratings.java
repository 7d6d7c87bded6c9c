package gapwise.analysis.agreement;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.budget.Work;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Measurements of the same subjects by the same raters. */
final class Ratings {
  private Ratings() {}

  /** One list a subject, in the order of raters; subjects with a blank are left out. */
  static List<List<Double>> read(
      AgreementPlan plan, DataTable table, Problems problems, List<Result.Warning> warnings) {
    Map<String, String> byRole = new LinkedHashMap<>();
    for (int j = 0; j < plan.raters().size(); j++) {
      Work.check();
      String column = plan.raters().get(j);
      if (!table.columns().contains(column)) {
        problems.add(
            "raters[" + j + "]",
            "unknown-column",
            "there is no column '" + column + "'; the data have " + table.columns());
      }
      byRole.put(column, column);
    }
    String subject = plan.head().columns().getOrDefault("subject", "subject");
    if (table.columns().contains(subject)) {
      byRole.put("study", subject);
    } else if (plan.head().columns().containsKey("subject")) {
      problems.add(
          "columns.subject",
          "unknown-column",
          "there is no column '" + subject + "'; the data have " + table.columns());
    }
    Columns columns = new Columns(byRole);
    List<List<Double>> ratings = new ArrayList<>();
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      List<Double> one = new ArrayList<>();
      for (String rater : plan.raters()) {
        OptionalDouble value = reported.number(rater);
        if (value.isPresent()) {
          one.add(value.getAsDouble());
        } else {
          reported.missing(rater);
        }
      }
      reported.lacking().ifPresent(warnings::add);
      if (one.size() == plan.raters().size()) {
        ratings.add(one);
      }
    }
    return ratings;
  }
}
