package gapwise.exchange;

import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problems;
import gapwise.table.Cell;
import gapwise.table.Column;
import gapwise.table.Header;
import gapwise.table.Stored;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where the columns of the template stand in a sheet that is being read. */
final class SheetHeader {
  private static final int LONGEST_SHOWN = 60;

  private final Header header;
  private final Map<String, Column> columns = new HashMap<>();
  private final Map<String, Import.Spot> spots = new HashMap<>();

  private SheetHeader(Header header) {
    this.header = header;
  }

  /**
   * Matches a header with the template; what is unknown, twice there or missing becomes a problem.
   */
  static SheetHeader of(Header header, Sheet sheet, Problems problems) {
    SheetHeader matched = new SheetHeader(header);
    List<String> names = sheet.names();
    for (Column column : header.columns()) {
      String name = Sheet.folded(column.name());
      if (problems.size() >= TemplateReading.MOST_PROBLEMS) {
        break;
      }
      if (!names.contains(name)) {
        problems.add(matched.at(header.row(), column), "unknown-column", unknown(column, names));
      } else if (matched.columns.putIfAbsent(name, column) != null) {
        problems.add(
            matched.at(header.row(), column),
            "duplicate-column-name",
            "The column '" + name + "' stands twice. Every column needs a name of its own.");
      }
    }
    for (Field<?> field : sheet.fields()) {
      if (field.required() && !matched.columns.containsKey(field.name())) {
        problems.add(
            header.where(),
            "missing-column",
            "The column '"
                + field.name()
                + "' ("
                + field.title()
                + ") is missing. Every row needs it; add it to the header.");
      }
    }
    return matched;
  }

  private static String unknown(Column column, List<String> names) {
    return "The template has no column '"
        + excerpt(column.name())
        + "'. "
        + Nearest.to(column.name(), names)
            .map(name -> "Did you mean " + name + "? Otherwise delete the column.")
            .orElse("Rename it to a column of the template, or delete it.");
  }

  private static String excerpt(String name) {
    return name.length() <= LONGEST_SHOWN ? name : name.substring(0, LONGEST_SHOWN) + "...";
  }

  Optional<Column> column(String name) {
    return Optional.ofNullable(columns.get(name));
  }

  /** The place of a field in a row, in words; the row alone for a field that is not named. */
  String at(int row, String name) {
    String place = "sheet " + header.sheet() + ", row " + row;
    String words =
        column(name)
            .map(column -> at(row, column))
            .orElse(name.isEmpty() ? place : place + " (no column " + name + ")");
    return told(words, row, name.isEmpty() ? List.of() : List.of(name));
  }

  /** The place of two fields in a row, in words. */
  String at(int row, String one, String other) {
    String words =
        "sheet "
            + header.sheet()
            + ", row "
            + row
            + ", columns "
            + named(one)
            + " and "
            + named(other);
    return told(words, row, List.of(one, other));
  }

  /** Keeps what the words stand for. */
  private String told(String words, int row, List<String> names) {
    spots.put(words, new Import.Spot(Sheet.folded(header.sheet()), row, names));
    return words;
  }

  /** The places told so far, by their words. */
  Map<String, Import.Spot> spots() {
    return spots;
  }

  private String named(String name) {
    return column(name).map(column -> column.letter() + " (" + name + ")").orElse(name);
  }

  private String at(int row, Column column) {
    return new Cell(header.sheet(), row, column, "", Stored.TEXT).where();
  }
}
