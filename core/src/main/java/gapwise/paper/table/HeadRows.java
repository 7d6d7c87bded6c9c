package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * The lines of a head put together to rows. A row ends below a cell that spans columns with heads
 * of their own; all other lines are cells on several lines.
 *
 * @param cuts between columns
 * @param extents from edge to edge of each column where rules tell, else as {@code contents}
 * @param contents where the words of each column stand in the body
 * @param partial level lines that run under parts of the head
 */
record HeadRows(Cuts cuts, List<Box> extents, List<Box> contents, List<Box> partial) {
  /** A spanning cell stands in the middle of its columns, but for this part of their width. */
  private static final double OFF_CENTRE = 0.2;

  /** Words at one edge are so near to it, points. */
  private static final double EDGE = 1.5;

  static HeadRows of(
      List<RowLine> body, Cuts cuts, List<Box> partial, Box whole, List<Double> seams) {
    List<Box> extents = new ArrayList<>();
    List<Box> contents = new ArrayList<>();
    for (int column = 0; column < cuts.columns(); column++) {
      double left = column == 0 ? whole.left() : cuts.at().get(column - 1);
      double right = column == cuts.at().size() ? whole.right() : cuts.at().get(column);
      Box edges = new Box(left, whole.top(), Math.max(left, right), whole.bottom());
      Box extent = null;
      for (RowLine line : body) {
        for (Line stretch : line.stretches()) {
          Box box = Cuts.whole(stretch);
          if (box.left() > left - 2 && box.right() < right + 2) {
            extent = extent == null ? box : extent.with(box);
          }
        }
      }
      contents.add(extent == null ? edges : extent);
      extents.add(extent == null || seams.size() >= cuts.at().size() ? edges : extent);
    }
    return new HeadRows(cuts, extents, contents, partial);
  }

  List<Strip> rows(List<RowLine> lines) {
    List<Strip> rows = new ArrayList<>();
    boolean ended = true;
    for (RowLine line : lines) {
      Strip strip = spanned(line, below(lines, line));
      if (ended) {
        rows.add(strip);
      } else {
        rows.set(rows.size() - 1, rows.get(rows.size() - 1).with(strip));
      }
      ended = !strip.spans().isEmpty();
    }
    return rows;
  }

  /** Columns in which a head stands further down. */
  private boolean[] below(List<RowLine> lines, RowLine line) {
    boolean[] below = new boolean[cuts.columns()];
    for (RowLine other : lines) {
      if (other.baseline() > line.baseline()) {
        Strip.of(other, cuts).cells().keySet().forEach(column -> below[column] = true);
      }
    }
    return below;
  }

  private Strip spanned(RowLine line, boolean[] below) {
    Strip strip = Strip.of(line, cuts);
    TreeMap<Integer, List<Word>> cells = new TreeMap<>();
    TreeMap<Integer, Integer> spans = new TreeMap<>();
    List<Integer> starts = List.copyOf(strip.cells().keySet());
    int free = 0;
    for (int i = 0; i < starts.size(); i++) {
      int at = starts.get(i);
      int next = i + 1 < starts.size() ? starts.get(i + 1) : cuts.columns();
      int last = Math.min(next - 1, at + strip.spans().getOrDefault(at, 1) - 1);
      Box box = Box.around(strip.words(at).stream().map(Word::wholeBox).toList());
      int[] range = range(new int[] {at, Math.max(at, last)}, box, free, next, line, below);
      cells.put(range[0], strip.words(at));
      if (range[1] > range[0] && anyBelow(range, below)) {
        spans.put(range[0], range[1] - range[0] + 1);
      }
      free = range[1] + 1;
    }
    return new Strip(cells, spans, strip.top(), strip.bottom(), strip.size());
  }

  private static boolean anyBelow(int[] range, boolean[] below) {
    int count = 0;
    for (int column = range[0]; column <= range[1]; column++) {
      count += below[column] ? 1 : 0;
    }
    return count > 1;
  }

  /** First and last column of a head cell that by its words alone takes some. */
  private int[] range(int[] own, Box box, int free, int next, RowLine line, boolean[] below) {
    for (Box rule : partial) {
      double under = rule.centre() - line.baseline();
      if (under > 0 && under < 1.3 * line.size() && isCentred(rule, box)) {
        int from = Math.max(free, columnOf(rule.left(), true));
        int to = Math.min(next - 1, columnOf(rule.right(), false));
        if (from <= own[0] && to >= own[1]) {
          return new int[] {from, to};
        }
      }
    }
    int[] best = own;
    double least = below[own[0]] ? offCentre(own[0], own[1], box) : -1;
    for (int from = Math.max(free, own[0] - 4); from <= own[0]; from++) {
      for (int to = own[1]; to < next; to++) {
        double off = offCentre(from, to, box);
        if (to > from
            && allBelow(from, to, below)
            && off < OFF_CENTRE * breadth(from, to)
            && off < least - 2) {
          best = new int[] {from, to};
          least = off;
        }
      }
    }
    return best[0] == own[0] && best[1] == own[1] ? aligned(own, box, free, next, below) : best;
  }

  /**
   * Heads that stand at the edge of their columns rather than in the middle: they take the columns
   * up to the next head, where no head of their own stands on this line.
   */
  private int[] aligned(int[] own, Box box, int free, int next, boolean[] below) {
    boolean right = Math.abs(box.right() - contents.get(own[1]).right()) < EDGE;
    boolean left = Math.abs(box.left() - contents.get(own[0]).left()) < EDGE;
    if (right == left || !below[own[0]]) {
      return own;
    }
    int from = own[0];
    int to = own[1];
    while (right && from > Math.max(free, 1) && below[from - 1]) {
      from--;
    }
    while (left && next < cuts.columns() && to + 1 < next && below[to + 1]) {
      to++;
    }
    return new int[] {from, to};
  }

  /** Lines under neighbouring heads may touch and then seem one. */
  private static boolean isCentred(Box rule, Box head) {
    return rule.sharedWidth(head) > 0.5 * head.width()
        && (Math.abs(rule.middle() - head.middle()) < 4 + 0.1 * rule.width()
            || Math.abs(rule.left() - head.left()) < 4);
  }

  /** The first or last column whose words a rule runs under. */
  private int columnOf(double x, boolean first) {
    for (int i = 0; i < extents.size(); i++) {
      int column = first ? i : extents.size() - 1 - i;
      Box extent = extents.get(column);
      if (first ? extent.middle() >= x : extent.middle() <= x) {
        return column;
      }
    }
    return cuts.column(x);
  }

  private static boolean allBelow(int from, int to, boolean[] below) {
    for (int column = from; column <= to; column++) {
      if (!below[column]) {
        return false;
      }
    }
    return true;
  }

  private double breadth(int from, int to) {
    return extents.get(to).right() - extents.get(from).left();
  }

  private double offCentre(int from, int to, Box box) {
    return Math.abs((extents.get(from).left() + extents.get(to).right()) / 2 - box.middle());
  }
}
