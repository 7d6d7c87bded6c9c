package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Values that moderators may be given for a prediction: how they lie in the data, and what is taken
 * for one that is not given (the mean of the studies that enter, or the reference level).
 */
final class ModeratorValues {
  private final Map<String, Moderator> moderators = new LinkedHashMap<>();
  private final Map<String, Range> ranges = new LinkedHashMap<>();

  /** Smallest, mean and largest value of a column of numbers. */
  private record Range(double least, double mean, double most) {}

  /**
   * Of some rows.
   *
   * @param rows that the moderators were read against
   */
  ModeratorValues(List<Moderator> all, List<DataTable.Row> rows) {
    all.forEach(this::add);
    for (String column : moderators.keySet()) {
      if (isNumber(column) && !rows.isEmpty()) {
        double[] values =
            rows.stream()
                .mapToDouble(row -> ReportedRow.parse(row.text(column)).orElseThrow())
                .toArray();
        ranges.put(column, range(values));
      }
    }
  }

  private void add(Moderator one) {
    if (one instanceof Moderator.Product product) {
      add(product.first());
      add(product.second());
    } else {
      moderators.putIfAbsent(one.columns().get(0), one);
    }
  }

  private static Range range(double[] values) {
    double least = values[0];
    double most = values[0];
    double mean = 0;
    for (int i = 0; i < values.length; i++) {
      least = Math.min(least, values[i]);
      most = Math.max(most, values[i]);
      // A running mean, which large numbers cannot overflow.
      mean += values[i] / (i + 1) - mean / (i + 1);
    }
    return new Range(least, mean, most);
  }

  private boolean isNumber(String column) {
    return !(moderators.get(column) instanceof Moderator.Categories);
  }

  /**
   * A text for each column, complete.
   *
   * @param where the values stand in the plan
   * @param problems takes what does not fit
   */
  Map<String, String> complete(Map<String, String> given, String where, Problems problems) {
    given
        .keySet()
        .forEach(
            column -> {
              if (!moderators.containsKey(column)) {
                problems.add(
                    where + "." + column,
                    "unknown-column",
                    "'" + column + "' is no moderator of this plan; it has " + moderators.keySet());
              }
            });
    Map<String, String> cells = new LinkedHashMap<>();
    for (String column : moderators.keySet()) {
      cells.put(column, given.containsKey(column) ? given.get(column) : usual(column));
      check(column, cells.get(column), where + "." + column, problems);
    }
    return cells;
  }

  private String usual(String column) {
    return moderators.get(column) instanceof Moderator.Categories categories
        ? categories.levels().isEmpty() ? "" : categories.levels().get(0)
        : ranges.containsKey(column) ? Double.toString(ranges.get(column).mean()) : "0";
  }

  private void check(String column, String text, String where, Problems problems) {
    if (moderators.get(column) instanceof Moderator.Categories categories) {
      if (!categories.levels().isEmpty() && !categories.levels().contains(text)) {
        problems.add(
            where,
            "unknown-level",
            "'"
                + text
                + "' is no level of '"
                + column
                + "' among the studies that enter; it has "
                + categories.levels());
      }
    } else if (ReportedRow.parse(text).isEmpty()) {
      problems.add(
          where, "not-a-number", "found '" + text + "', expected a number for '" + column + "'");
    }
  }

  /** Whether a value lies below the smallest or above the largest of the studies that enter. */
  boolean outside(Map<String, String> cells) {
    return ranges.entrySet().stream()
        .anyMatch(
            one -> {
              String cell = Objects.requireNonNull(cells.get(one.getKey()), one.getKey());
              double value = ReportedRow.parse(cell).orElseThrow();
              return value < one.getValue().least() || value > one.getValue().most();
            });
  }

  /** Whether a column is one of numbers. */
  boolean takesNumbers(String column) {
    return moderators.containsKey(column) && isNumber(column);
  }

  /** Values as they stand in a result: numbers as numbers. */
  Map<String, JsonNode> told(Map<String, String> cells) {
    Map<String, JsonNode> told = new LinkedHashMap<>();
    cells.forEach(
        (column, text) ->
            told.put(
                column,
                isNumber(column)
                    ? JsonNodeFactory.instance.numberNode(ReportedRow.parse(text).orElseThrow())
                    : JsonNodeFactory.instance.textNode(text)));
    return told;
  }
}
