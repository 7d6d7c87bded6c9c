package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import gapwise.printed.Statistic;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A grid by rows, and what kind of row each is. */
final class Matrix {
  private final Grid grid;
  private final Map<Long, GridCell> places;
  private final int height;
  private final int width;

  Matrix(Grid grid) {
    this.grid = grid;
    this.places = grid.byPlace();
    this.height =
        grid.cells().stream().filter(c -> !c.isBlank()).mapToInt(GridCell::row).max().orElse(-1)
            + 1;
    this.width =
        grid.cells().stream().filter(c -> !c.isBlank()).mapToInt(GridCell::column).max().orElse(-1)
            + 1;
  }

  Grid grid() {
    return grid;
  }

  int height() {
    return height;
  }

  int width() {
    return width;
  }

  /** The cell that stands at a place with a text. */
  Optional<GridCell> at(int row, int column) {
    return Optional.ofNullable(places.get(Grid.place(row, column))).filter(cell -> !cell.isBlank());
  }

  /** The cell at a place with a text or only a colour. */
  Optional<GridCell> seen(int row, int column) {
    return Optional.ofNullable(places.get(Grid.place(row, column)));
  }

  /** The cell that covers a place: its own, or the one it is merged with. */
  Optional<GridCell> covering(int row, int column) {
    return at(row, column)
        .or(() -> grid.mergedAt(row, column).flatMap(one -> at(one.firstRow(), one.firstColumn())));
  }

  String text(int row, int column) {
    return at(row, column).map(GridCell::text).orElse("");
  }

  List<GridCell> row(int row) {
    List<GridCell> cells = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      at(row, column).ifPresent(cells::add);
    }
    return cells;
  }

  boolean isBlank(int row) {
    return row(row).isEmpty();
  }

  /** Whether one text stands in the row alone. */
  boolean isLine(int row) {
    return row(row).size() == 1;
  }

  /** Whether the row holds values: at least as many as other texts, the first one not counted. */
  boolean isData(int row) {
    List<GridCell> cells = row(row);
    if (cells.size() < 2) {
      return false;
    }
    List<GridCell> rest = cells.subList(1, cells.size());
    long values = rest.stream().filter(Matrix::isValue).count();
    boolean timePoints =
        at(row, cells.get(0).column()).isPresent()
            && cells.get(0).column() > 0
            && cells.stream().allMatch(Matrix::isTime);
    return values > 0 && !timePoints && 3 * values >= rest.size();
  }

  private static boolean isTime(GridCell cell) {
    return Printed.read(cell.text()) instanceof PrintedValue.Amount amount
        && amount.unit().filter(unit -> unit.dimension() == Unit.Dimension.TIME).isPresent();
  }

  /** Whether a text is a value rather than a name or a heading; "n = 12" is a heading. */
  static boolean isValue(GridCell cell) {
    PrintedValue value = Printed.read(cell.text());
    if (value instanceof PrintedValue.Amount amount) {
      return amount.named().filter(Statistic.COUNT::equals).isEmpty();
    }
    return !(value instanceof PrintedValue.Words
        || value instanceof PrintedValue.Nothing
        || value instanceof PrintedValue.Ditto);
  }
}
