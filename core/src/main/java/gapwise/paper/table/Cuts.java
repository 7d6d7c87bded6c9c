package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where the columns of a table part.
 *
 * @param at rising, one fewer than columns
 */
record Cuts(List<Double> at) {
  /** A gap between columns is at least so wide, points. */
  private static final double NARROWEST = 2.5;

  /** In a long table one line in so many may run over a gap. */
  private static final int LINES_FOR_ONE_STRAY = 12;

  Cuts {
    at = List.copyOf(at);
  }

  int columns() {
    return at.size() + 1;
  }

  int column(double x) {
    return (int) at.stream().filter(cut -> cut < x).count();
  }

  static Cuts between(List<RowLine> lines, List<Double> ruled) {
    return between(lines, ruled, List.of());
  }

  /**
   * Gaps that all lines leave free, but for lines that hold one stretch only.
   *
   * @param lines of the body
   * @param ruled places of upright rules
   * @param head lines above, whose words are cut as little as can be
   */
  static Cuts between(List<RowLine> lines, List<Double> ruled, List<RowLine> head) {
    List<RowLine> counted = lines.stream().filter(l -> l.stretches().size() > 1).toList();
    List<Box> taken = new ArrayList<>();
    for (RowLine line : counted) {
      line.stretches().forEach(s -> taken.add(whole(s)));
    }
    List<Double> cuts = new ArrayList<>(ruled);
    int stray = counted.size() / LINES_FOR_ONE_STRAY;
    for (double[] gap : gaps(taken, stray)) {
      double middle = clear(gap, head);
      boolean known = ruled.stream().anyMatch(x -> x > gap[0] - 1 && x < gap[1] + 1);
      if (!known) {
        cuts.add(middle);
      }
    }
    cuts.sort(Comparator.naturalOrder());
    return new Cuts(cuts);
  }

  /** The middle of the widest piece of a gap that the fewest words of the head stand over. */
  private static double clear(double[] gap, List<RowLine> head) {
    List<Box> words = new ArrayList<>();
    for (RowLine line : head) {
      for (Line stretch : line.stretches()) {
        stretch.words().forEach(word -> words.add(word.wholeBox()));
      }
    }
    List<Double> edges = new ArrayList<>(List.of(gap[0], gap[1]));
    for (Box word : words) {
      edges.add(Math.max(gap[0], Math.min(gap[1], word.left())));
      edges.add(Math.max(gap[0], Math.min(gap[1], word.right())));
    }
    edges.sort(Comparator.naturalOrder());
    double best = (gap[0] + gap[1]) / 2;
    double widest = 0;
    long fewest = Long.MAX_VALUE;
    for (int i = 0; i + 1 < edges.size(); i++) {
      double width = edges.get(i + 1) - edges.get(i);
      double middle = (edges.get(i) + edges.get(i + 1)) / 2;
      long over = words.stream().filter(b -> b.left() < middle && b.right() > middle).count();
      if (width > 0.5 && (over < fewest || over == fewest && width > widest)) {
        best = middle;
        widest = width;
        fewest = over;
      }
    }
    return best;
  }

  static Box whole(Line stretch) {
    return Box.around(stretch.words().stream().map(w -> w.wholeBox()).toList());
  }

  /** Stretches of the breadth that at most so many boxes cover, with more covered on both sides. */
  private static List<double[]> gaps(List<Box> boxes, int stray) {
    List<double[]> edges = new ArrayList<>();
    for (Box box : boxes) {
      edges.add(new double[] {box.left(), 1});
      edges.add(new double[] {box.right(), -1});
    }
    edges.sort(Comparator.<double[]>comparingDouble(e -> e[0]).thenComparingDouble(e -> e[1]));
    List<double[]> gaps = new ArrayList<>();
    int depth = 0;
    boolean begun = false;
    double from = 0;
    for (double[] edge : edges) {
      boolean was = depth > stray;
      depth += (int) edge[1];
      boolean is = depth > stray;
      if (was && !is) {
        from = edge[0];
        begun = true;
      } else if (!was && is && begun && edge[0] - from >= NARROWEST) {
        gaps.add(new double[] {from, edge[0]});
      }
    }
    return gaps;
  }

  /** Whether lines of another page fit these columns: hardly any stretch runs over a cut. */
  boolean fit(List<RowLine> lines) {
    int all = 0;
    int over = 0;
    for (RowLine line : lines) {
      for (Line stretch : line.stretches()) {
        Box box = whole(stretch);
        all++;
        over += at.stream().anyMatch(x -> x > box.left() + 2 && x < box.right() - 2) ? 1 : 0;
      }
    }
    return over * 10 <= all;
  }
}
