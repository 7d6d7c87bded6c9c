package gapwise.paper.reading;

import gapwise.paper.Page;
import gapwise.paper.Page.Lettering;
import gapwise.paper.Place;
import gapwise.paper.Places;
import gapwise.paper.table.Grid;
import gapwise.paper.table.GridCell;
import gapwise.printed.Doubt;
import gapwise.untidy.FoundField;
import gapwise.untidy.Preview;
import gapwise.untidy.SetApart;
import gapwise.untidy.UntidySheets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
    Set<Integer> guessed = new HashSet<>();
    for (Page page : pages) {
      if (page.lettering() == Lettering.GUESSED || page.damaged()) {
        guessed.add(page.number());
      }
    }
    List<PaperField> fields = new ArrayList<>();
    for (FoundField field : preview.fields()) {
      Optional<GridCell> cell = Optional.ofNullable(cells.get(field.cell()));
      fields.add(placed(field, cell, pages, guessed));
    }
    return new TableFields(fields, preview.apart(), preview.notes());
  }

  private static PaperField placed(
      FoundField field, Optional<GridCell> cell, List<Page> pages, Set<Integer> guessed) {
    Optional<Place> place = cell.flatMap(c -> place(c, pages));
    FoundField doubted = field;
    if (cell.isPresent() && guessed.contains(cell.get().page())) {
      doubted =
          changed(
              field,
              Doubt.NUMBER,
              "The letters of this page were guessed or are damaged. Compare the value with the"
                  + " picture of the page.");
    } else if (cell.isPresent() && cell.get().text().contains("\uFFFD")) {
      doubted =
          changed(
              field,
              Doubt.NUMBER,
              "The file does not tell what some letters of this cell mean. Read them from the"
                  + " picture of the page.");
    }
    return new PaperField(doubted, place);
  }

  private static FoundField changed(FoundField field, Doubt doubt, String why) {
    return new FoundField(
        field.into(),
        field.whose(),
        field.outcome(),
        field.row(),
        field.value().askedBecause(doubt, why),
        field.sheet(),
        field.cell(),
        field.carriedFrom(),
        field.words());
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
