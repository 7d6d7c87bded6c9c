package gapwise.untidy;

import gapwise.problem.Problems;
import gapwise.table.TableFile;
import gapwise.table.WholeSheets;
import java.util.List;

/** The door of this room: reads a colleague's sheet, or the grid of a paper's table. */
public final class UntidySheets {
  private UntidySheets() {}

  /**
   * Reads a workbook (.xlsx) or a text file with separators.
   *
   * @param known mappings that a person accepted before; one is applied to a table with its headers
   * @param problems told what of the file cannot be read
   */
  public static Preview read(TableFile file, List<Mapping> known, Problems problems) {
    List<Grid> grids = WholeSheets.read(file, problems).stream().map(SheetGrids::of).toList();
    return read(grids, known);
  }

  /** Reads grids that belong to one file or paper; studies and groups go through all of them. */
  public static Preview read(List<Grid> grids, List<Mapping> known) {
    BookReading book = new BookReading(known);
    grids.forEach(book::read);
    return book.preview();
  }
}
