package gapwise.analysis.curves;

import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** What rows of points and of numbers at risk have in common. */
final class CurveRow {
  /** Beyond this no unit of time is meant, and squares of times stay far within a double. */
  static final double LONGEST_TIME = 1e12;

  private final Columns columns;
  private final Set<String> groups;
  private final String table;
  private final Problems problems;
  private final Set<String> told = new HashSet<>();

  /**
   * Rows of one table.
   *
   * @param groups of the plan; if it is one only, rows need not name it
   * @param table put before a row's place; empty for the plan's source
   */
  CurveRow(Columns columns, Set<String> groups, String table, Problems problems) {
    this.columns = columns;
    this.groups = groups;
    this.table = table;
    this.problems = problems;
  }

  /** The group of a row; empty, with a problem or as missing, if it has none that is known. */
  Optional<String> group(DataTable.Row row, ReportedRow reported) {
    if (!columns.has("group")) {
      return Optional.of(groups.iterator().next());
    }
    String group = row.text(columns.column("group"));
    if (group.isEmpty()) {
      reported.missing("group");
      return Optional.empty();
    }
    if (groups.contains(group)) {
      return Optional.of(group);
    }
    if (told.add(group)) {
      problems.add(
          table + row.place() + ", column " + columns.column("group"),
          "unknown-group",
          "'"
              + group
              + "' is none of the plan's groups "
              + groups
              + "; add it there with its"
              + " patients, or correct its name");
    }
    return Optional.empty();
  }

  /** The time of a row; empty, with a problem or as missing, if there is none that can be. */
  OptionalDouble time(ReportedRow reported) {
    OptionalDouble time = value(reported, "time");
    if (time.isPresent() && !(time.getAsDouble() >= 0 && time.getAsDouble() <= LONGEST_TIME)) {
      reported.wrong(
          "time",
          "time-out-of-range",
          "found " + time.getAsDouble() + ", expected a time from 0 to " + LONGEST_TIME);
      return OptionalDouble.empty();
    }
    return time;
  }

  OptionalDouble value(ReportedRow reported, String role) {
    OptionalDouble value = reported.number(role);
    if (value.isEmpty()) {
      reported.missing(role);
    }
    return value;
  }
}
