package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Page;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts of a page in which a table may stand: each column of running text, and bands over all
 * columns.
 */
final class Zones {
  /** Lines of a head take no more than so many points. */
  private static final double HEAD_HEIGHT = 45;

  private Zones() {}

  /**
   * A part.
   *
   * @param box its breadth and height
   * @param without bands that belong to others
   */
  record Zone(Box box, List<Box> without) {
    boolean holds(Box word) {
      return word.middle() >= box.left()
          && word.middle() <= box.right()
          && word.centre() >= box.top()
          && word.centre() <= box.bottom()
          && without.stream()
              .noneMatch(b -> word.centre() >= b.top() && word.centre() <= b.bottom());
    }
  }

  static List<Zone> of(Page page, List<Box> rules, List<Caption> captions) {
    List<Box> columns = page.columns();
    if (columns.size() < 2) {
      return List.of(new Zone(page.box(), List.of()));
    }
    List<Double> gutters = new ArrayList<>();
    for (int i = 0; i + 1 < columns.size(); i++) {
      gutters.add((columns.get(i).right() + columns.get(i + 1).left()) / 2);
    }
    List<Box> bands = new ArrayList<>();
    for (Box band : ruled(page, rules, gutters)) {
      bands.add(withHead(band, captions));
    }
    bands.addAll(unruled(page, gutters, captions, bands));
    List<Zone> zones = new ArrayList<>();
    bands.forEach(band -> zones.add(new Zone(band, List.of())));
    double left = 0;
    for (int i = 0; i <= gutters.size(); i++) {
      double right = i < gutters.size() ? gutters.get(i) : page.width();
      zones.add(new Zone(new Box(left, 0, right, page.height()), bands));
      left = right;
    }
    return zones;
  }

  /** A head without a rule above it stands between the caption and the first rule. */
  private static Box withHead(Box band, List<Caption> captions) {
    double top =
        captions.stream()
            .mapToDouble(c -> c.box().bottom())
            .filter(bottom -> bottom < band.top() && band.top() - bottom < HEAD_HEIGHT)
            .max()
            .orElse(band.top());
    return new Box(band.left(), top, band.right(), band.bottom());
  }

  /** Between the first and last of rules that run over a gap between columns. */
  private static List<Box> ruled(Page page, List<Box> rules, List<Double> gutters) {
    List<Box> over =
        rules.stream()
            .filter(r -> gutters.stream().anyMatch(x -> r.left() < x - 10 && r.right() > x + 10))
            .toList();
    List<Box> bands = new ArrayList<>();
    for (List<Box> frame : Rules.frames(over)) {
      Box open = frame.get(0);
      for (int i = 1; i < frame.size(); i++) {
        Box band = new Box(0, frame.get(i - 1).centre(), page.width(), frame.get(i).centre());
        if (isProse(page, band, gutters)) {
          open = frame.get(i);
        } else {
          Box start = open;
          bands.removeIf(b -> b.top() == start.centre());
          bands.add(new Box(0, open.centre(), page.width(), frame.get(i).centre()));
        }
      }
    }
    return bands;
  }

  private static boolean isProse(Page page, Box band, List<Double> gutters) {
    return page.lines().stream()
            .filter(l -> band.holdsMiddleOf(l.box()) && fillsColumn(l, page, gutters))
            .count()
        > 2;
  }

  private static boolean fillsColumn(Line line, Page page, List<Double> gutters) {
    double column = page.width() / (gutters.size() + 1.0);
    boolean crosses =
        gutters.stream().anyMatch(x -> line.box().left() < x && line.box().right() > x);
    return !crosses
        && line.words().size() >= 6
        && line.box().width() > 0.6 * column
        && !new RowLine(gapwise.paper.Stretches.of(line.words(), 1.1)).isTabular(1.1);
  }

  /** Lines of cells that go on over the gap, line beside line, with no running text on a side. */
  private static List<Box> unruled(
      Page page, List<Double> gutters, List<Caption> captions, List<Box> taken) {
    List<RowLine> lines =
        RowLine.of(page.words().stream().filter(w -> w.turn() == Word.Turn.NONE).toList());
    List<Box> bands = new ArrayList<>();
    List<RowLine> run = new ArrayList<>();
    for (int i = 0; i <= lines.size(); i++) {
      boolean ends = i == lines.size() || !isWideRow(lines.get(i), page, gutters);
      if (!ends && !run.isEmpty()) {
        ends = lines.get(i).baseline() - run.get(run.size() - 1).baseline() > 40;
      }
      if (ends) {
        add(run, page, captions, taken, bands);
        run.clear();
      }
      if (i < lines.size() && isWideRow(lines.get(i), page, gutters)) {
        run.add(lines.get(i));
      }
    }
    return bands;
  }

  private static void add(
      List<RowLine> run, Page page, List<Caption> captions, List<Box> taken, List<Box> bands) {
    if (run.size() < 3) {
      return;
    }
    Box around = Box.around(run.stream().map(RowLine::box).toList());
    Box band = new Box(0, around.top() - 0.5, page.width(), around.bottom() + 0.5);
    long announced =
        captions.stream()
            .filter(c -> c.box().bottom() < band.top() + 14 && band.top() - c.box().bottom() < 60)
            .count();
    if (announced < 2 && taken.stream().noneMatch(t -> t.sharedHeight(band) > 0)) {
      bands.add(band);
    }
  }

  private static boolean isWideRow(RowLine line, Page page, List<Double> gutters) {
    boolean left = false;
    boolean right = false;
    boolean prose = false;
    for (Line stretch : line.stretches()) {
      left |= stretch.box().left() < gutters.get(0);
      right |= stretch.box().right() > gutters.get(0);
      prose |= stretch.words().size() >= 6 && stretch.box().width() > 0.25 * page.width();
    }
    return left && right && !prose && line.stretches().size() >= 3;
  }
}
