package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.RowValue;
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
            rows.stream().mapToDouble(row -> row.number(column).orElseThrow()).toArray();
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
   * A value for each column, complete.
   *
   * @param where the values stand in the plan
   * @param problems takes what does not fit
   */
  Map<String, RowValue> complete(Map<String, RowValue> given, String where, Problems problems) {
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
    Map<String, RowValue> cells = new LinkedHashMap<>();
    for (String column : moderators.keySet()) {
      RowValue one = given.get(column);
      RowValue value = one == null ? usual(column) : one;
      cells.put(column, value);
      check(column, value, where + "." + column, problems);
    }
    return cells;
  }

  private RowValue usual(String column) {
    if (moderators.get(column) instanceof Moderator.Categories categories) {
      return new RowValue.Text(categories.levels().isEmpty() ? "" : categories.levels().get(0));
    }
    Range range = ranges.get(column);
    return new RowValue.Number(range == null ? 0 : range.mean());
  }

  private void check(String column, RowValue value, String where, Problems problems) {
    String text = value.text();
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
    } else if (value.number().isEmpty()) {
      problems.add(
          where, "not-a-number", "found '" + text + "', expected a number for '" + column + "'");
    }
  }

  /** Whether a value lies below the smallest or above the largest of the studies that enter. */
  boolean outside(Map<String, RowValue> cells) {
    return ranges.entrySet().stream()
        .anyMatch(
            one -> {
              RowValue cell = Objects.requireNonNull(cells.get(one.getKey()), one.getKey());
              double value = cell.number().orElseThrow();
              return value < one.getValue().least() || value > one.getValue().most();
            });
  }

  /** Whether a column is one of numbers. */
  boolean takesNumbers(String column) {
    return moderators.containsKey(column) && isNumber(column);
  }

  /** Values as they stand in a result: numbers as numbers. */
  Map<String, JsonNode> told(Map<String, RowValue> cells) {
    Map<String, JsonNode> told = new LinkedHashMap<>();
    cells.forEach(
        (column, value) ->
            told.put(
                column,
                isNumber(column)
                    ? JsonNodeFactory.instance.numberNode(value.number().orElseThrow())
                    : JsonNodeFactory.instance.textNode(value.text())));
    return told;
  }
}
