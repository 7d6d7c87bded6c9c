package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import gapwise.printed.Said;
import gapwise.printed.Statistic;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A grid by rows, and what kind of row each is. */
final class Matrix {
  /** Most places that merged cells cover; a sheet of people has some hundred. */
  private static final int MOST_COVERED = 500_000;

  private final Grid grid;
  private final Map<Long, GridCell> places;
  private final Map<Long, Grid.Merged> merged = new HashMap<>();
  private final Map<Integer, Boolean> data = new HashMap<>();
  private final Map<String, Boolean> named = new HashMap<>();
  private final int height;
  private final int width;

  Matrix(Grid grid) {
    this.grid = grid;
    this.places = grid.byPlace();
    grid.merged().forEach(this::cover);
    this.height =
        grid.cells().stream().filter(c -> !c.isBlank()).mapToInt(GridCell::row).max().orElse(-1)
            + 1;
    this.width =
        grid.cells().stream().filter(c -> !c.isBlank()).mapToInt(GridCell::column).max().orElse(-1)
            + 1;
  }

  private void cover(Grid.Merged one) {
    for (int row = one.firstRow(); row <= one.lastRow(); row++) {
      for (int column = one.firstColumn(); column <= one.lastColumn(); column++) {
        if (merged.size() >= MOST_COVERED) {
          return;
        }
        merged.putIfAbsent(Grid.place(row, column), one);
      }
    }
  }

  /** The merged cells that a place belongs to. */
  Optional<Grid.Merged> mergedAt(int row, int column) {
    return Optional.ofNullable(merged.get(Grid.place(row, column)));
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
        .or(() -> mergedAt(row, column).flatMap(one -> at(one.firstRow(), one.firstColumn())));
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
    return data.computeIfAbsent(row, this::holdsValues);
  }

  private boolean holdsValues(int row) {
    List<GridCell> cells = row(row);
    if (cells.size() < 2) {
      return false;
    }
    List<GridCell> rest = cells.subList(1, cells.size());
    long values = rest.stream().filter(Matrix::isValue).count();
    return values > 0 && 3 * values >= rest.size() && !namesTimes(cells);
  }

  /** "Study, 12 months, 24 months" names columns, though times are values elsewhere. */
  private boolean namesTimes(List<GridCell> cells) {
    List<GridCell> others = cells.stream().filter(cell -> !isTime(cell)).toList();
    boolean times = cells.stream().filter(Matrix::isValue).allMatch(Matrix::isTime);
    boolean shifted = others.isEmpty() && cells.get(0).column() > 0;
    boolean named = others.size() > 1 && others.stream().allMatch(cell -> names(cell.text()));
    return times && (shifted || named);
  }

  /** Whether a text speaks of something that is known, with one strange word at most. */
  boolean names(String text) {
    return named.computeIfAbsent(
        text,
        any ->
            Concepts.of(text, Said.read(text))
                .filter(found -> found.over().size() < 2)
                .isPresent());
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
