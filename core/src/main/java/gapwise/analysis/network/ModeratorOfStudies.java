package gapwise.analysis.network;

import gapwise.analysis.rows.DataTable;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The number of each study: the mean over its rows that have one, since arms of a study may tell it
 * each for its own patients.
 *
 * @param byStudy those of studies with a row that has one
 */
record ModeratorOfStudies(Map<String, Double> byStudy) {
  ModeratorOfStudies {
    byStudy = Map.copyOf(byStudy);
  }

  /** Reads the column of a plan's moderator; throws what is wrong with its cells. */
  static ModeratorOfStudies read(NetworkPlan plan, String column, DataTable table) {
    if (!table.columns().contains(column)) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "moderators",
                  "unknown-column",
                  "there is no column '" + column + "'; the data have " + table.columns())));
    }
    Problems problems = new Problems();
    String study = plan.head().columns().getOrDefault("study", "study");
    Map<String, List<Double>> values = new LinkedHashMap<>();
    for (DataTable.Row row : table.rows()) {
      OptionalDouble number = row.number(column);
      if (number.isPresent()) {
        values.computeIfAbsent(row.text(study), s -> new ArrayList<>()).add(number.getAsDouble());
      } else if (!row.text(column).isEmpty()) {
        problems.add(
            row.place() + ", column " + column,
            "not-a-number",
            "found '" + row.text(column) + "', expected a number or nothing");
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Map<String, Double> means = new LinkedHashMap<>();
    values.forEach((label, all) -> means.put(label, mean(all)));
    return new ModeratorOfStudies(means);
  }

  /** A running mean, which large numbers cannot overflow. */
  private static double mean(List<Double> values) {
    double mean = 0;
    for (int i = 0; i < values.size(); i++) {
      mean += values.get(i) / (i + 1) - mean / (i + 1);
    }
    return mean;
  }
}
