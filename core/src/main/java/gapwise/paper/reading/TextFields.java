package gapwise.paper.reading;

import gapwise.paper.Page;
import gapwise.paper.table.Grid;
import java.util.List;

/** Fields out of the running text of a paper. */
final class TextFields {
  private TextFields() {}

  static List<PaperField> of(List<Page> pages, List<Grid> grids, List<PaperField> known) {
    return List.of();
  }
}
