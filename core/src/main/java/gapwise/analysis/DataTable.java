package gapwise.analysis;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The rows a plan is run on.
 *
 * @param columns names in their order
 * @param rows at least one
 * @param warnings from making the rows
 * @param sha256 hash of the data, in hexadecimal
 */
record DataTable(
    Set<String> columns, List<Row> rows, List<Result.Warning> warnings, String sha256) {
  DataTable {
    columns = Collections.unmodifiableSet(new LinkedHashSet<>(columns));
    rows = List.copyOf(rows);
    warnings = List.copyOf(warnings);
  }

  /**
   * One row.
   *
   * @param number from 1
   * @param cells text by column, without blank ones
   */
  record Row(int number, Map<String, String> cells) {
    Row {
      cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
    }

    /** The text in a column; empty text if it is blank. */
    String text(String column) {
      return cells.getOrDefault(column, "");
    }

    /** Where it is, for people. */
    String place() {
      return "row " + number;
    }
  }
}
