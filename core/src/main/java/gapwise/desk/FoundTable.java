package gapwise.desk;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.paper.Box;
import gapwise.paper.Place;
import gapwise.paper.reading.PaperField;
import gapwise.paper.reading.PaperFields;
import gapwise.untidy.FoundField;
import gapwise.untidy.Grid;
import gapwise.untidy.GridCell;
import gapwise.untidy.Preview;
import gapwise.untidy.UntidySheets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A table to be taken into a draft: what was found in it, and where each cell stands in the paper.
 *
 * @param texts its cells row by row, to be looked at
 * @param preview what was found
 * @param places where cells stand on pages, by their names; none of a table that was pasted
 */
public record FoundTable(List<List<String>> texts, Preview preview, Map<String, CellPlace> places) {
  /** Longer texts come as a file. */
  public static final int MOST_LETTERS = 500_000;

  /** More rows than any paper has patients. */
  public static final int MOST_ROWS = 2_000;

  private static final int MOST_COLUMNS = 200;

  public FoundTable {
    texts = texts.stream().map(List::copyOf).toList();
    Objects.requireNonNull(preview, "preview");
    places = Map.copyOf(places);
  }

  /**
   * Where a cell stands on a page.
   *
   * @param page from 1
   * @param boxes around its words, at least one
   * @param words as printed
   */
  public record CellPlace(int page, List<PageBox> boxes, String words) {
    public CellPlace {
      boxes = List.copyOf(boxes);
    }
  }

  /**
   * A table that was copied from a spreadsheet or a page: a line a row, cells parted by tabs, or by
   * semicolons, or by two blanks and more.
   *
   * @throws IllegalArgumentException where it is larger than a table is
   */
  public static FoundTable pasted(String text) {
    if (text.length() > MOST_LETTERS) {
      throw new IllegalArgumentException(
          "a pasted table has at most " + MOST_LETTERS + " letters, had " + text.length());
    }
    List<String> lines = text.lines().filter(line -> !line.isBlank()).toList();
    if (lines.size() > MOST_ROWS) {
      throw new IllegalArgumentException(
          "a pasted table has at most " + MOST_ROWS + " rows, had " + lines.size());
    }
    String between = separator(lines);
    List<List<String>> rows =
        lines.stream()
            .map(line -> List.of(line.split(between, MOST_COLUMNS)))
            .map(cells -> cells.stream().map(String::strip).toList())
            .toList();
    List<GridCell> cells = new ArrayList<>();
    for (int row = 0; row < rows.size(); row++) {
      for (int column = 0; column < rows.get(row).size(); column++) {
        cells.add(GridCell.plain(row, column, rows.get(row).get(column), id(row, column)));
      }
    }
    return of(rows, new Grid("", cells, List.of()), Map.of());
  }

  private static String separator(List<String> lines) {
    if (lines.stream().anyMatch(line -> line.contains("\t"))) {
      return "\t";
    }
    return lines.stream().filter(line -> line.contains(";")).count() * 2 > lines.size()
        ? ";"
        : " {2,}";
  }

  private static String id(int row, int column) {
    return (row + 1) + "." + (column + 1);
  }

  /** A table of a page of the paper. */
  public static FoundTable printed(gapwise.paper.table.Grid table) {
    List<GridCell> cells = new ArrayList<>();
    List<Grid.Merged> merged = new ArrayList<>();
    Map<String, CellPlace> places = new HashMap<>();
    for (int row = 0; row < table.rows().size(); row++) {
      for (int column = 0; column < table.columns(); column++) {
        gapwise.paper.table.GridCell cell = table.rows().get(row).get(column);
        String id = id(row, column);
        if (!cell.isEmpty()) {
          cells.add(GridCell.plain(row, column, cell.text(), id));
          cell.box()
              .flatMap(FoundTable::box)
              .ifPresent(
                  box ->
                      places.put(
                          id, new CellPlace(cell.page(), List.of(box), shortened(cell.text()))));
        }
        if (cell.columns() > 1 || cell.rows() > 1) {
          merged.add(
              new Grid.Merged(row, column, row + cell.rows() - 1, column + cell.columns() - 1));
        }
      }
    }
    return of(table.texts(), new Grid(table.caption(), cells, merged), places);
  }

  /** All that is found in a paper: its tables and its running text. */
  public static FoundTable whole(PaperFields paper) {
    List<FoundField> fields = new ArrayList<>();
    Map<String, CellPlace> places = new HashMap<>();
    for (PaperField found : paper.fields()) {
      // Cells of different tables have the same names; here each value has one of its own.
      String id = "value " + (fields.size() + 1);
      fields.add(found.field().in(id));
      found.place().flatMap(FoundTable::place).ifPresent(place -> places.put(id, place));
    }
    Preview preview = new Preview(fields, paper.apart(), paper.notes(), List.of(), List.of());
    return new FoundTable(List.of(), preview, places);
  }

  private static Optional<CellPlace> place(Place place) {
    List<PageBox> boxes =
        place.boxes().stream().flatMap(box -> box(box).stream()).limit(Reading.MOST_BOXES).toList();
    return boxes.isEmpty()
        ? Optional.empty()
        : Optional.of(new CellPlace(place.page(), boxes, shortened(place.words())));
  }

  private static String shortened(String words) {
    return words.length() <= Reading.MOST_WORDS ? words : words.substring(0, Reading.MOST_WORDS);
  }

  private static Optional<PageBox> box(Box box) {
    double left = Math.max(0, box.left());
    double top = Math.max(0, box.top());
    boolean sound =
        box.right() - left > 0.01
            && box.bottom() - top > 0.01
            && Math.max(box.right(), box.bottom()) <= PageBox.LARGEST;
    return sound
        ? Optional.of(new PageBox(left, top, box.right(), box.bottom()))
        : Optional.empty();
  }

  private static FoundTable of(List<List<String>> texts, Grid grid, Map<String, CellPlace> places) {
    return new FoundTable(texts, UntidySheets.read(List.of(grid), List.of()), places);
  }

  /** Where a field was read; empty where its cell stands on no page. */
  Optional<Reading> reading(FoundField field, String column, Optional<String> paper) {
    Optional<CellPlace> place = Optional.ofNullable(places.get(field.cell()));
    return paper.flatMap(
        file -> place.map(at -> new Reading(column, file, at.page(), at.boxes(), at.words())));
  }
}
