package gapwise.table;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * The first row of a sheet that is not blank: its column names, all different.
 *
 * @param sheet the sheet's name; of a CSV file its name without the ending
 * @param row the header's own row number, from 1
 * @param columns from left to right
 */
public record Header(String sheet, int row, List<Column> columns) {
  public Header {
    Objects.requireNonNull(sheet, "sheet");
    columns = List.copyOf(columns);
    Set<String> names = new HashSet<>();
    for (int index = 0; index < columns.size(); index++) {
      Column column = columns.get(index);
      if (column.index() != index) {
        throw new IllegalArgumentException(
            "columns must stand in order, " + column + " at " + index);
      }
      if (!names.add(column.name())) {
        throw new IllegalArgumentException("columns must differ in name, twice " + column.name());
      }
    }
  }

  /** The names from left to right. */
  public List<String> names() {
    return columns.stream().map(Column::name).toList();
  }

  /** The column of that name, letter for letter. */
  public Optional<Column> column(String name) {
    return columns.stream().filter(column -> column.name().equals(name)).findFirst();
  }

  /** The header's place in words for a {@link gapwise.problem.Problem}. */
  public String where() {
    return Place.row(sheet, row);
  }
}
