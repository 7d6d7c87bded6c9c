package gapwise.table;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a header and located rows out of the bare values of one sheet, and passes them on. */
final class SheetAssembler {
  private final String sheet;
  private final FileReading reading;
  private Optional<Header> header = Optional.empty();
  private boolean headerSeen;

  SheetAssembler(String sheet, FileReading reading) {
    this.sheet = sheet;
    this.reading = reading;
  }

  /**
   * Whether further rows are of use: not after a header that was wrong, for then no cell has a
   * name.
   */
  boolean takesRows() {
    return !headerSeen || header.isPresent();
  }

  boolean isEmpty() {
    return !headerSeen;
  }

  /** The next row, values from the first column on; missing ones at the end are blank. */
  void row(int number, List<Value> values) {
    if (values.stream().allMatch(Value::isBlank)) {
      return;
    }
    if (!headerSeen) {
      headerSeen = true;
      header = headerOf(number, values);
      header.ifPresent(reading::begin);
    } else if (header.isPresent()) {
      rowBelow(header.get(), number, values);
    }
  }

  /** The place of a cell in words, with the column's name where it is known. */
  String where(int number, int index) {
    String letter = Column.letter(index);
    return header
        .filter(known -> index < known.columns().size())
        .map(known -> Place.cell(sheet, number, letter, known.columns().get(index).name()))
        .orElseGet(() -> Place.cell(sheet, number, letter));
  }

  /** The place of a row in words. */
  String where(int number) {
    return Place.row(sheet, number);
  }

  /** The row that should name the columns could not be read; its problem has been reported. */
  void headerLost() {
    headerSeen = true;
  }

  void end() {
    header.ifPresent(reading::end);
  }

  private void rowBelow(Header header, int number, List<Value> values) {
    int width = header.columns().size();
    boolean sound = true;
    for (int index = width; index < values.size(); index++) {
      if (!values.get(index).isBlank()) {
        sound = false;
        reading.problem(
            where(number, index),
            "value-without-column",
            "Found '"
                + Excerpt.of(values.get(index).text())
                + "' in a column that has no name in row "
                + header.row()
                + ". Name the column or clear the cell.");
      }
    }
    if (sound) {
      List<Value> fitted = new ArrayList<>(values.subList(0, Math.min(width, values.size())));
      fitted.addAll(Collections.nCopies(width - fitted.size(), Value.BLANK));
      reading.row(new Row(header, number, fitted));
    }
  }

  /** Blank names at the right end are no columns: spreadsheets leave such behind. */
  private Optional<Header> headerOf(int number, List<Value> values) {
    int width = values.size();
    while (values.get(width - 1).isBlank()) {
      width--;
    }
    if (width > SheetXml.MOST_COLUMNS) {
      reading.problem(
          where(number),
          "too-many-columns",
          "The header names "
              + width
              + " columns; a sheet has at most "
              + SheetXml.MOST_COLUMNS
              + ". A separator may be wrong, or lines may have been joined.");
      return Optional.empty();
    }
    List<Column> columns = new ArrayList<>();
    Map<String, Column> byName = new HashMap<>();
    boolean sound = true;
    for (int index = 0; index < width; index++) {
      String name = Blank.strip(values.get(index).text());
      String where = where(number, index);
      if (name.isEmpty()) {
        sound = false;
        reading.problem(
            where,
            "blank-column-name",
            "The column has no name. Name it in the header, or delete the column.");
        continue;
      }
      Column column = new Column(name, index);
      Column first = byName.putIfAbsent(name, column);
      if (first != null) {
        sound = false;
        reading.problem(
            where,
            "duplicate-column-name",
            "The name '"
                + Excerpt.of(name)
                + "' already stands in column "
                + first.letter()
                + ". Every column needs a name of its own.");
      }
      columns.add(column);
    }
    return sound ? Optional.of(new Header(sheet, number, columns)) : Optional.empty();
  }
}
