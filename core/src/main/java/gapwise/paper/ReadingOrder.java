package gapwise.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order in which a person reads the words of a page: down each column of running text, and
 * across where something stands over all columns.
 *
 * <p>Columns are told from a table by their prose: a gap counts as one between columns where long
 * stretches of words without a gap stand on both of its sides, line after line.
 *
 * @param lines in reading order
 * @param columns from left to right
 */
public record ReadingOrder(List<Line> lines, List<Box> columns) {
  /** Lines beside each other that it takes for columns; a heading beside another is one. */
  private static final int FEWEST_PAIRS = 4;

  /** A stretch of prose takes at least this share of a page's width. */
  private static final double PROSE_WIDTH = 0.2;

  private static final int PROSE_WORDS = 4;

  public static ReadingOrder of(List<Word> words, double pageWidth, Guard guard) {
    List<Line> stretches = Stretches.of(words, 0.9);
    List<Double> gutters = gutters(stretches, pageWidth, guard);
    List<Line> sorted = new ArrayList<>(stretches);
    sorted.sort(Comparator.comparingDouble(Line::baseline));
    List<Line> lines = new ArrayList<>();
    List<List<Line>> columns = empty(gutters.size() + 1);
    List<List<Line>> all = empty(gutters.size() + 1);
    for (Line stretch : sorted) {
      guard.tick();
      Box box = stretch.box();
      int from = column(gutters, box.left() + 1);
      int to = column(gutters, box.right() - 1);
      if (from != to) {
        flush(columns, lines);
        columns = empty(gutters.size() + 1);
        columns.get(0).add(stretch);
        flush(columns, lines);
        columns = empty(gutters.size() + 1);
      } else {
        columns.get(from).add(stretch);
        all.get(from).add(stretch);
      }
    }
    flush(columns, lines);
    List<Box> boxes = new ArrayList<>();
    for (List<Line> column : all) {
      if (!column.isEmpty()) {
        boxes.add(Box.around(column.stream().map(Line::box).toList()));
      }
    }
    return new ReadingOrder(lines, boxes);
  }

  private static List<List<Line>> empty(int count) {
    List<List<Line>> columns = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      columns.add(new ArrayList<>());
    }
    return columns;
  }

  private static int column(List<Double> gutters, double x) {
    return (int) gutters.stream().filter(g -> g < x).count();
  }

  private static void flush(List<List<Line>> columns, List<Line> lines) {
    for (List<Line> column : columns) {
      List<Word> words = new ArrayList<>();
      column.forEach(stretch -> words.addAll(stretch.words()));
      lines.addAll(Stretches.of(words, Double.MAX_VALUE));
    }
  }

  /** Middles of the gaps between columns, from left to right. */
  private static List<Double> gutters(List<Line> stretches, double pageWidth, Guard guard) {
    List<Line> prose =
        stretches.stream()
            .filter(s -> s.words().size() >= PROSE_WORDS)
            .filter(s -> s.box().width() > PROSE_WIDTH * pageWidth)
            .toList();
    List<double[]> gaps = new ArrayList<>();
    for (Line left : prose) {
      for (Line right : prose) {
        guard.tick();
        Box a = left.box();
        Box b = right.box();
        if (b.left() - a.right() > 4 && a.sharedHeight(b) > 0.3 * a.height()) {
          gaps.add(new double[] {a.right(), b.left()});
        }
      }
    }
    List<Double> gutters = new ArrayList<>();
    while (gaps.size() >= FEWEST_PAIRS && gutters.size() < 4) {
      double best = 0;
      long most = 0;
      for (double[] gap : gaps) {
        guard.tick();
        double x = gap[1] - 2;
        long count = gaps.stream().filter(g -> g[0] < x && x < g[1]).count();
        if (count > most) {
          most = count;
          best = x;
        }
      }
      if (most < FEWEST_PAIRS) {
        break;
      }
      double x = best;
      gutters.add(x);
      gaps.removeIf(g -> g[0] < x && x < g[1]);
    }
    gutters.sort(Comparator.naturalOrder());
    return gutters;
  }
}
