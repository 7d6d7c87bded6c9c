package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * A row while it is put together: words by column, and how many columns each cell spans.
 *
 * @param cells words by first column
 * @param spans columns taken, where more than one
 */
record Strip(
    TreeMap<Integer, List<Word>> cells,
    TreeMap<Integer, Integer> spans,
    double top,
    double bottom,
    double size) {
  /** Cells of one line are apart by at least this part of the size; words by a quarter. */
  private static final double LEAST_GAP = 0.2;

  static Strip of(RowLine line, Cuts cuts) {
    Strip strip =
        new Strip(new TreeMap<>(), new TreeMap<>(), line.baseline(), line.baseline(), line.size());
    for (Line stretch : line.stretches()) {
      for (Line piece : pieces(stretch, cuts)) {
        Box box = Cuts.whole(piece);
        int from = cuts.column(box.left() + Math.min(2, box.width() / 2));
        int to = cuts.column(box.right() - Math.min(2, box.width() / 2));
        strip.cells.computeIfAbsent(from, x -> new ArrayList<>()).addAll(piece.words());
        if (to > from) {
          strip.spans.merge(from, to - from + 1, Math::max);
        }
      }
    }
    return strip;
  }

  /** A stretch cut where a gap between its words lies at a cut of the columns. */
  private static List<Line> pieces(Line stretch, Cuts cuts) {
    List<Line> pieces = new ArrayList<>();
    List<Word> piece = new ArrayList<>();
    for (Word word : stretch.words()) {
      if (!piece.isEmpty()) {
        double left = piece.get(piece.size() - 1).wholeBox().right();
        double right = word.box().left();
        boolean parted =
            right - left > LEAST_GAP * word.size()
                && cuts.at().stream().anyMatch(x -> x > left - 1 && x < right + 1);
        if (parted) {
          pieces.add(new Line(piece));
          piece.clear();
        }
      }
      piece.add(word);
    }
    pieces.add(new Line(piece));
    return pieces;
  }

  Strip with(Strip next) {
    TreeMap<Integer, List<Word>> all = new TreeMap<>();
    cells.forEach((column, words) -> all.put(column, new ArrayList<>(words)));
    next.cells.forEach(
        (column, words) -> all.computeIfAbsent(column, x -> new ArrayList<>()).addAll(words));
    TreeMap<Integer, Integer> both = new TreeMap<>(spans);
    next.spans.forEach((column, span) -> both.merge(column, span, Math::max));
    return new Strip(all, both, top, next.bottom, Math.max(size, next.size));
  }

  boolean hasFirst() {
    return cells.containsKey(0);
  }

  boolean onlyFirst() {
    return cells.size() == 1 && hasFirst() && !spans.containsKey(0);
  }

  String first() {
    return hasFirst() ? CellText.of(words(0)) : "";
  }

  List<Word> words(int column) {
    List<Word> words = cells.get(column);
    return words == null ? List.of() : words;
  }

  List<GridCell> row(int columns, int page) {
    List<GridCell> row = new ArrayList<>();
    for (int column = 0; column < columns; column++) {
      row.add(GridCell.of(words(column), page, spans.getOrDefault(column, 1)));
    }
    return row;
  }
}
