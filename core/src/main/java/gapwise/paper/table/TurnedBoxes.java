package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.TurnedView;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;

/** Between a page and the view in which a table printed sideways is upright. */
final class TurnedBoxes {
  private TurnedBoxes() {}

  /** A box of the page in the view. */
  static Box seen(TurnedView view, Box box) {
    return switch (view.turn()) {
      case UP ->
          Box.between(
              view.height() - box.bottom(), box.left(), view.height() - box.top(), box.right());
      case DOWN ->
          Box.between(
              box.top(), view.width() - box.right(), box.bottom(), view.width() - box.left());
      case OVER ->
          Box.between(
              view.width() - box.right(),
              view.height() - box.bottom(),
              view.width() - box.left(),
              view.height() - box.top());
      case NONE -> box;
    };
  }

  /** A table of the view with its places on the page. */
  static Grid back(Grid grid, TurnedView view) {
    List<List<GridCell>> rows = new ArrayList<>();
    for (List<GridCell> row : grid.rows()) {
      List<GridCell> cells = new ArrayList<>();
      for (GridCell cell : row) {
        List<Word> words = cell.words().stream().map(view::back).toList();
        cells.add(
            new GridCell(
                cell.text(),
                words,
                cell.page(),
                cell.box().map(view::back),
                cell.columns(),
                cell.rows()));
      }
      rows.add(cells);
    }
    List<Grid.Part> parts = new ArrayList<>();
    for (Grid.Part part : grid.parts()) {
      parts.add(new Grid.Part(part.page(), view.back(part.box()), part.firstRow()));
    }
    return new Grid(grid.caption(), parts, grid.headerRows(), rows);
  }
}
