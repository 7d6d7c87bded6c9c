package gapwise.analysis.multiverse;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.RowValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Ways of narrowing the rows by one column, the first of which is not to.
 *
 * @param column its name
 * @param levels all rows first
 */
record ColumnSubsets(String column, List<Level> levels) {
  static final String ALL = "all";

  ColumnSubsets {
    levels = List.copyOf(levels);
  }

  /**
   * One way of narrowing.
   *
   * @param name for people
   * @param numeric whether cells must be numbers
   * @param keeps whether a row with this cell, which is not blank, stays
   */
  record Level(String name, boolean numeric, Predicate<RowValue> keeps) {}

  static ColumnSubsets of(JsonNode json) {
    List<Level> levels = new ArrayList<>();
    levels.add(new Level(ALL, false, cell -> true));
    for (JsonNode group : json.path("only")) {
      List<String> values = texts(group);
      levels.add(
          new Level(
              say("analysis.rows-only", Map.of("values", String.join(" or ", values))),
              false,
              cell -> values.contains(cell.text())));
    }
    for (JsonNode group : json.path("without")) {
      List<String> values = texts(group);
      levels.add(
          new Level(
              say("analysis.rows-without", Map.of("values", String.join(" or ", values))),
              false,
              cell -> !values.contains(cell.text())));
    }
    for (JsonNode limit : json.path("atLeast")) {
      double least = limit.asDouble();
      levels.add(
          new Level(
              say("analysis.rows-at-least", Map.of("limit", limit.asText())),
              true,
              cell -> number(cell) >= least));
    }
    for (JsonNode limit : json.path("atMost")) {
      double most = limit.asDouble();
      levels.add(
          new Level(
              say("analysis.rows-at-most", Map.of("limit", limit.asText())),
              true,
              cell -> number(cell) <= most));
    }
    return new ColumnSubsets(json.get("column").asText(), levels);
  }

  boolean numeric() {
    return levels.stream().anyMatch(Level::numeric);
  }

  /** Whether a row stays at a level; a blank cell stays only where nothing is narrowed. */
  boolean keeps(int level, DataTable.Row row) {
    RowValue cell = row.cells().get(column);
    return level == 0 || (cell != null && levels.get(level).keeps().test(cell));
  }

  /** The number in a cell, which has been checked to be one. */
  private static double number(RowValue cell) {
    return cell.number().orElseThrow();
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }
}
