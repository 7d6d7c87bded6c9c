package gapwise.paper.reading;

import gapwise.paper.Page;
import gapwise.paper.Place;
import gapwise.paper.Places;
import gapwise.paper.table.Grid;
import gapwise.paper.table.GridCell;
import gapwise.untidy.FoundField;
import gapwise.untidy.Preview;
import gapwise.untidy.SetApart;
import gapwise.untidy.UntidySheets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Fields out of the tables of a paper.
 *
 * @param fields with their places
 * @param apart texts that are no values
 * @param notes of the reading
 */
record TableFields(List<PaperField> fields, List<SetApart> apart, List<String> notes) {
  /** All tables of a paper are of its one study, so they share a name. */
  static final String NAME = "paper";

  static TableFields of(List<Grid> grids, List<Page> pages) {
    Map<String, GridCell> cells = new HashMap<>();
    List<gapwise.untidy.Grid> sheets = new ArrayList<>();
    for (int i = 0; i < grids.size(); i++) {
      sheets.add(sheet(grids.get(i), i + 1, cells));
    }
    Preview preview = UntidySheets.read(sheets, List.of());
    List<PaperField> fields = new ArrayList<>();
    for (FoundField field : preview.fields()) {
      Optional<GridCell> cell = Optional.ofNullable(cells.get(field.cell()));
      fields.add(new PaperField(field, cell.flatMap(c -> place(c, pages))));
    }
    return new TableFields(fields, preview.apart(), preview.notes());
  }

  private static Optional<Place> place(GridCell cell, List<Page> pages) {
    return pages.stream()
        .filter(page -> page.number() == cell.page())
        .findFirst()
        .flatMap(page -> Places.of(page, cell.words()));
  }

  private static gapwise.untidy.Grid sheet(Grid grid, int number, Map<String, GridCell> cells) {
    List<gapwise.untidy.GridCell> located = new ArrayList<>();
    List<gapwise.untidy.Grid.Merged> merged = new ArrayList<>();
    // The caption says what numbers are and whose; an empty row parts it from the table.
    int first = grid.caption().isEmpty() ? 0 : 2;
    if (first > 0) {
      located.add(
          gapwise.untidy.GridCell.plain(0, 0, grid.caption(), "table " + number + ", caption"));
    }
    for (int row = 0; row < grid.rows().size(); row++) {
      for (int column = 0; column < grid.columns(); column++) {
        GridCell cell = grid.rows().get(row).get(column);
        if (cell.isEmpty()) {
          continue;
        }
        String id = "table " + number + ", row " + (row + 1) + ", column " + (column + 1);
        cells.put(id, cell);
        located.add(gapwise.untidy.GridCell.plain(first + row, column, cell.text(), id));
        if (cell.columns() > 1 || cell.rows() > 1) {
          merged.add(
              new gapwise.untidy.Grid.Merged(
                  first + row,
                  column,
                  first + row + cell.rows() - 1,
                  Math.min(grid.columns(), column + cell.columns()) - 1));
        }
      }
    }
    return new gapwise.untidy.Grid(NAME, located, merged);
  }
}
