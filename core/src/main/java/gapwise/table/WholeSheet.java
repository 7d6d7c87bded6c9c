package gapwise.table;

import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * One sheet as it looks, for readers who must find out what it is: no row of it is a header yet.
 *
 * @param name the sheet's name; of a text file its name without folders and ending
 * @param hidden whether the workbook hides it
 * @param cells those that hold anything, row by row
 * @param merged cells that are one
 * @param hiddenRows numbers of hidden rows, from 1
 * @param hiddenColumns hidden columns, from 0
 */
public record WholeSheet(
    String name,
    boolean hidden,
    List<WholeCell> cells,
    List<Merged> merged,
    Set<Integer> hiddenRows,
    Set<Integer> hiddenColumns) {
  public WholeSheet {
    Objects.requireNonNull(name, "name");
    cells = List.copyOf(cells);
    merged = List.copyOf(merged);
    hiddenRows = Set.copyOf(hiddenRows);
    hiddenColumns = Set.copyOf(hiddenColumns);
  }

  /** A rectangle of cells that are one; rows from 1, columns from 0, both ends within. */
  public record Merged(int firstRow, int firstColumn, int lastRow, int lastColumn) {}
}
