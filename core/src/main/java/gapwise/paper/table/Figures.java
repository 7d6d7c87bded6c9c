package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.Line;
import gapwise.paper.Page;
import java.util.List;
import java.util.Locale;

/** Tells words of a drawing, such as those on its axes, from a table without rules. */
final class Figures {
  private Figures() {}

  /** Whether a block of cells belongs to a drawing or its numbers at risk. */
  static boolean isPartOf(Page page, Box box, List<RowLine> block) {
    boolean atRisk =
        block.stream()
            .limit(3)
            .anyMatch(l -> l.text().toLowerCase(Locale.ROOT).matches(".*\\bat risk\\b.*"));
    if (atRisk) {
      return true;
    }
    for (DrawnPath path : page.paths()) {
      boolean drawing = path.points().size() > 5 && !path.filled() || path.curved();
      if (drawing && path.box().height() > 20 && path.box().meets(box)) {
        return true;
      }
    }
    return false;
  }

  /** Whether lines of cells stand under one another, as in a table, and hold numbers. */
  static boolean aligned(List<RowLine> block) {
    int number = 0;
    int all = 0;
    for (RowLine line : block) {
      List<Line> cells = line.stretches();
      for (int i = 1; i < cells.size(); i++) {
        all++;
        number += cells.get(i).text().matches("[^\\p{L}]*[0-9].*") ? 1 : 0;
      }
    }
    return Cuts.between(block, List.of()).columns() > 1 && number * 3 >= all;
  }
}
