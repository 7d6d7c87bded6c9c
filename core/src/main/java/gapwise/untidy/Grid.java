package gapwise.untidy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A table as it looks: located texts, and which of them cover several places. It may come from a
 * sheet, or from the page of a paper.
 *
 * @param name of the sheet, or of the table in a paper
 * @param cells those that hold anything, in any order, one for a place
 * @param merged rectangles that are one cell; the text stands in their first place
 */
public record Grid(String name, List<GridCell> cells, List<Merged> merged) {
  /** Largest row and column of a grid; the readers of files have their own, lower limits. */
  private static final int MOST = 1 << 20;

  public Grid {
    Objects.requireNonNull(name, "name");
    cells = List.copyOf(cells);
    merged = List.copyOf(merged);
    for (GridCell cell : cells) {
      if (cell.row() > MOST || cell.column() > MOST) {
        throw new IllegalArgumentException("cell out of the largest grid: " + cell.id());
      }
    }
  }

  /** A rectangle of places, counted from 0, both ends within. */
  public record Merged(int firstRow, int firstColumn, int lastRow, int lastColumn) {}

  /** The cells by place, for quick looking up. */
  Map<Long, GridCell> byPlace() {
    Map<Long, GridCell> places = new HashMap<>();
    cells.forEach(cell -> places.putIfAbsent(place(cell.row(), cell.column()), cell));
    return places;
  }

  static long place(int row, int column) {
    return ((long) row << 32) | column;
  }
}
