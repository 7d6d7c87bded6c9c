package gapwise.untidy;

import gapwise.table.Stored;
import gapwise.table.WholeCell;
import gapwise.table.WholeSheet;
import java.util.List;

/** Sheets of a file as grids. */
final class SheetGrids {
  private SheetGrids() {}

  static Grid of(WholeSheet sheet) {
    List<Grid.Merged> merged =
        sheet.merged().stream()
            .map(
                one ->
                    new Grid.Merged(
                        one.firstRow() - 1, one.firstColumn(), one.lastRow() - 1, one.lastColumn()))
            .toList();
    return new Grid(
        sheet.name(), sheet.cells().stream().map(cell -> cell(sheet, cell)).toList(), merged);
  }

  private static GridCell cell(WholeSheet sheet, WholeCell cell) {
    boolean hidden =
        sheet.hidden()
            || sheet.hiddenRows().contains(cell.row())
            || sheet.hiddenColumns().contains(cell.column());
    return new GridCell(
        cell.row() - 1,
        cell.column(),
        cell.text(),
        cell.reference(),
        cell.stored() == Stored.DATE,
        cell.formula(),
        cell.comment(),
        cell.fill(),
        cell.struck(),
        hidden);
  }
}
