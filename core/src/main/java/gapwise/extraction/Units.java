package gapwise.extraction;

import gapwise.exchange.Template;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Which column says in what a number is, or what it counts: a number of one person beside the unit
 * of another would be a third value that nobody read.
 */
final class Units {
  private static final Set<String> AMOUNTS =
      Set.of(
          "mean",
          "sd",
          "median",
          "q1",
          "q3",
          "min",
          "max",
          "se",
          "ci_lower",
          "ci_upper",
          "unit",
          "spread_unstated",
          "value_words");

  private static final Set<String> COUNTS =
      Set.of("events", "total", "percent", "events_counted_back", "unit_counted");

  private static final Set<String> MONEY = Set.of("currency", "price_year");

  private static final String UNIT = "_unit";

  private Units() {}

  /** The column that a column hangs on; a unit hangs on itself. */
  static Optional<String> of(String sheet, String column) {
    if (sheet.equals(Template.OUTCOMES)) {
      return ofOutcome(column);
    }
    if (column.endsWith(UNIT)) {
      return Optional.of(column);
    }
    // The longest name first: time_to_union_unit and not time_unit.
    for (String start = column; !start.isEmpty(); start = shorter(start)) {
      if (Template.column(sheet, start + UNIT).isPresent()) {
        return Optional.of(start + UNIT);
      }
    }
    return Optional.empty();
  }

  private static String shorter(String name) {
    int at = name.lastIndexOf('_');
    return at < 0 ? "" : name.substring(0, at);
  }

  private static Optional<String> ofOutcome(String column) {
    if (AMOUNTS.contains(column)) {
      return Optional.of("unit");
    }
    if (COUNTS.contains(column)) {
      return Optional.of("unit_counted");
    }
    if (MONEY.contains(column)) {
      return Optional.of("currency");
    }
    for (String start : List.of("time_point", "person_time")) {
      if (column.startsWith(start)) {
        return Optional.of(start + UNIT);
      }
    }
    return column.startsWith("effect_") ? Optional.of("effect_kind") : Optional.empty();
  }
}
