package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Stretches;
import gapwise.paper.Word;
import java.util.List;

/**
 * Words of a table on one baseline.
 *
 * @param stretches from left to right, cut where the gap is wider than between words
 */
record RowLine(List<Line> stretches) {
  /** A gap in a cell is at most this part of the size of its letters. */
  static final double CELL_GAP = 0.5;

  static List<RowLine> of(List<Word> words) {
    return Stretches.rows(words).stream()
        .map(row -> new RowLine(Stretches.of(row, CELL_GAP)))
        .toList();
  }

  double baseline() {
    return stretches.get(0).baseline();
  }

  double size() {
    return stretches.stream().mapToDouble(Line::size).max().orElse(1);
  }

  Box box() {
    return Box.around(stretches.stream().map(Line::box).toList());
  }

  int words() {
    return stretches.stream().mapToInt(s -> s.words().size()).sum();
  }

  String text() {
    return String.join(" ", stretches.stream().map(Line::text).toList());
  }

  /** Whether a wide gap parts it, as between cells. */
  boolean isTabular(double least) {
    for (int i = 0; i + 1 < stretches.size(); i++) {
      Box left = stretches.get(i).box();
      if (stretches.get(i + 1).box().left() - left.right() > least * size()) {
        return true;
      }
    }
    return false;
  }

  /** The longest run of words. */
  int longest() {
    return stretches.stream().mapToInt(s -> s.words().size()).max().orElse(0);
  }
}
