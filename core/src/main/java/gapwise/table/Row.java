package gapwise.table;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** One row below the header. Immutable; may be kept after the reading. */
public final class Row {
  private final Header header;
  private final int number;
  private final List<Value> values;

  /**
   * @param values one for each column of the header
   */
  Row(Header header, int number, List<Value> values) {
    if (values.size() != header.columns().size()) {
      throw new IllegalArgumentException(
          "values must be " + header.columns().size() + ", were " + values.size());
    }
    this.header = header;
    this.number = number;
    this.values = List.copyOf(values);
  }

  public Header header() {
    return header;
  }

  public String sheet() {
    return header.sheet();
  }

  /** The row number a spreadsheet shows, the header's row counted, from 1. */
  public int number() {
    return number;
  }

  /** The cell of a column, blank or not; empty when the sheet has no such column. */
  public Optional<Cell> find(String columnName) {
    return header.column(columnName).map(this::cell);
  }

  /**
   * The cell of a column that the caller knows to exist.
   *
   * @throws IllegalArgumentException when the sheet has no such column
   */
  public Cell cell(String columnName) {
    return find(columnName)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no column " + columnName + " among " + header.names()));
  }

  /**
   * The cell of a column of this row's header; faster than by name, for readers of many rows.
   *
   * @throws IllegalArgumentException when the column is another sheet's
   */
  public Cell cell(Column column) {
    if (column.index() >= values.size() || !header.columns().get(column.index()).equals(column)) {
      throw new IllegalArgumentException("no " + column + " among " + header.names());
    }
    Value value = values.get(column.index());
    return new Cell(sheet(), number, column, value.text(), value.stored());
  }

  /** What stands in a column, without spaces around it; empty when blank or no such column. */
  public Optional<String> text(String columnName) {
    return find(columnName).filter(cell -> !cell.isBlank()).map(Cell::stripped);
  }

  /** Every cell from left to right, blank ones too. */
  public List<Cell> cells() {
    return IntStream.range(0, values.size())
        .mapToObj(index -> cell(header.columns().get(index)))
        .toList();
  }

  /** The row's place in words for a {@link gapwise.problem.Problem}. */
  public String where() {
    return Place.row(sheet(), number);
  }

  @Override
  public String toString() {
    return where() + " " + values.stream().map(Value::text).toList();
  }
}
