package gapwise.paper.table;

import gapwise.paper.Box;
import gapwise.paper.Line;
import gapwise.paper.Page;
import gapwise.paper.Stretches;
import gapwise.paper.Word;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Where tables stand on a page. */
final class Regions {
  /** Cells are apart by at least this part of the size of the letters in some line. */
  private static final double APART = 1.1;

  /** A line below another by more than so many sizes begins something new, unless ruled around. */
  private static final double FAR = 3.2;

  /** Without caption or rules, so many lines of cells make a table. */
  private static final int FEWEST_LINES = 3;

  private final Page page;
  private final List<Box> rules;
  private final List<Caption> captions;
  private final List<Line> level;
  private final List<Double> edges;

  /**
   * A table's place and its caption.
   *
   * @param sure whether it is a table by itself; otherwise only if it goes on from another
   */
  record Region(Box box, Optional<Caption> caption, boolean sure) {}

  Regions(Page page) {
    this.page = page;
    this.rules = Rules.level(page);
    this.captions = Caption.on(page);
    this.edges = edges(page);
    this.level =
        Stretches.of(
            page.words().stream().filter(w -> w.turn() == Word.Turn.NONE).toList(),
            RowLine.CELL_GAP);
  }

  List<Region> find() {
    List<Region> found = new ArrayList<>();
    for (Zones.Zone zone : Zones.of(page, rules, captions)) {
      found.addAll(in(zone));
    }
    return found;
  }

  private List<Region> in(Zones.Zone zone) {
    List<RowLine> lines =
        RowLine.of(
            level.stream()
                .flatMap(s -> parted(s).stream())
                .filter(s -> zone.holds(s.words().get(0).box()))
                .flatMap(s -> s.words().stream())
                .toList());
    List<Region> found = new ArrayList<>();
    int i = 0;
    while (i < lines.size()) {
      int end = block(lines, i, zone.box());
      if (end > i) {
        List<RowLine> block = lines.subList(headOf(lines, i, found), end);
        region(block, zone.box()).ifPresent(found::add);
        i = end;
      } else {
        i++;
      }
    }
    return found;
  }

  /** Where lines of running text begin in columns other than the first. */
  private static List<Double> edges(Page page) {
    List<Double> edges = new ArrayList<>();
    if (page.columns().size() > 1) {
      double first = page.columns().get(1).left() - 12;
      List<Double> lefts =
          page.lines().stream()
              .filter(l -> l.words().size() >= 5 && l.box().left() > first)
              .map(l -> l.box().left())
              .toList();
      for (double left : lefts) {
        long same = lefts.stream().filter(x -> Math.abs(x - left) < 0.6).count();
        if (same >= 4 && edges.stream().noneMatch(x -> Math.abs(x - left) < 1)) {
          edges.add(left);
        }
      }
    }
    return edges;
  }

  /** A word at the left edge of a column of running text begins anew, however near another is. */
  private List<Line> parted(Line stretch) {
    List<Line> pieces = new ArrayList<>();
    List<Word> piece = new ArrayList<>();
    for (Word word : stretch.words()) {
      boolean edge = edges.stream().anyMatch(x -> Math.abs(x - word.box().left()) < 1);
      if (edge && !piece.isEmpty()) {
        pieces.add(new Line(piece));
        piece.clear();
      }
      piece.add(word);
    }
    pieces.add(new Line(piece));
    return pieces;
  }

  /** Lines right above a block that belong to its head, though each is one run of words. */
  private int headOf(List<RowLine> lines, int start, List<Region> before) {
    int first = start;
    Box block = lines.get(start).box();
    while (first > 0) {
      RowLine line = lines.get(first - 1);
      boolean taken = before.stream().anyMatch(r -> r.box().meets(line.box()));
      if (taken || isCaption(line) || !isHead(line, lines.get(first), block)) {
        return first;
      }
      first--;
      block = block.with(line.box());
    }
    return first;
  }

  /** Whether a line above a block is near, and either below a rule over the block or narrow. */
  private boolean isHead(RowLine line, RowLine below, Box block) {
    Box box = line.box();
    boolean near = below.baseline() - line.baseline() < 1.6 * below.size();
    boolean ruled =
        rules.stream()
            .anyMatch(
                r ->
                    r.centre() < line.baseline()
                        && line.baseline() - r.centre() < 40
                        && r.sharedWidth(block) > 0.6 * block.width()
                        && r.left() < box.left() + 2
                        && r.right() > box.right() - 2);
    boolean narrow =
        box.left() > block.left() + 0.2 * block.width()
            && box.width() < 0.5 * block.width()
            && box.right() < block.right() + 2;
    boolean parted =
        rules.stream()
            .anyMatch(
                r ->
                    r.centre() > line.baseline()
                        && r.centre() < below.baseline() - 0.8 * below.size()
                        && r.sharedWidth(block) > 0.8 * block.width());
    return near && !parted && (ruled || narrow);
  }

  /** The end of the block of cells that begins at a line; the line itself if none does. */
  private int block(List<RowLine> lines, int start, Box zone) {
    if (!isCells(lines.get(start), zone) || isCaption(lines.get(start))) {
      return start;
    }
    int end = start + 1;
    int kept = end;
    while (end < lines.size()) {
      RowLine line = lines.get(end);
      RowLine before = lines.get(end - 1);
      double gap = line.baseline() - before.baseline();
      boolean framed = isFramed(before.box().with(line.box()));
      if (isCaption(line) || gap > FAR * before.size() && !framed || isClosed(before, line)) {
        break;
      }
      if (isCells(line, zone)) {
        kept = end + 1;
      } else if (!framed && isProse(line, zone)) {
        break;
      } else if (framed) {
        kept = end + 1;
      }
      end++;
    }
    return kept;
  }

  /** Whether a frame of rules ends between two lines. */
  private boolean isClosed(RowLine above, RowLine below) {
    for (List<Box> frame : Rules.frames(rules)) {
      Box last = frame.get(frame.size() - 1);
      boolean between =
          last.centre() > above.baseline() - 1
              && last.centre() < below.baseline() - 0.3 * below.size();
      if (frame.size() > 2 && between && last.sharedWidth(above.box()) > 0) {
        return true;
      }
    }
    return false;
  }

  private boolean isFramed(Box box) {
    for (List<Box> frame : Rules.frames(rules)) {
      Box first = frame.get(0);
      Box last = frame.get(frame.size() - 1);
      boolean within = first.centre() < box.centre() && last.centre() > box.centre();
      if (within
          && frame.size() > 1
          && first.sharedWidth(box) > 0.5 * box.width()
          && noCaptionBetween(first, last)) {
        return true;
      }
    }
    return false;
  }

  private boolean noCaptionBetween(Box first, Box last) {
    return captions.stream()
        .noneMatch(
            c ->
                c.box().centre() > first.centre()
                    && c.box().centre() < last.centre()
                    && c.box().sharedWidth(first) > 0);
  }

  private boolean isCells(RowLine line, Box zone) {
    return line.isTabular(APART) && !(isProse(line, zone) && !line.isTabular(2.5));
  }

  /** Running text fills its column, or goes on for long without a gap. */
  private static boolean isProse(RowLine line, Box zone) {
    double longest = line.stretches().stream().mapToDouble(s -> s.box().width()).max().orElse(0);
    return line.longest() >= 6 && longest > 0.6 * zone.width();
  }

  private boolean isCaption(RowLine line) {
    return captions.stream().anyMatch(c -> c.box().holdsMiddleOf(line.stretches().get(0).box()));
  }

  private Optional<Region> region(List<RowLine> block, Box zone) {
    Box box = Box.around(block.stream().map(RowLine::box).toList());
    Optional<Caption> caption = captionOf(box);
    long cells = block.stream().filter(line -> isCells(line, zone)).count();
    boolean framed =
        rules.stream()
                .filter(
                    r ->
                        r.sharedWidth(box) > 0.8 * box.width()
                            && r.centre() > box.top() - 12
                            && r.centre() < box.bottom() + 12)
                .count()
            >= 2;
    boolean enough = caption.isPresent() ? cells >= 1 : cells >= (framed ? 2 : FEWEST_LINES);
    boolean sure = enough && (caption.isPresent() || framed || Figures.aligned(block));
    if (Figures.isPartOf(page, box, block)) {
      return Optional.empty();
    }
    Box whole = box.grown(1);
    for (Box rule : rules) {
      boolean near = rule.centre() > box.top() - 12 && rule.centre() < box.bottom() + 12;
      if (near && rule.sharedWidth(box) > 0.5 * box.width()) {
        whole = whole.with(rule);
      }
    }
    // A rule may belong to a table below that is broader than this column.
    Box clipped =
        new Box(
            Math.min(box.left(), Math.max(whole.left(), zone.left())) - 1,
            box.top() - 1,
            Math.max(box.right(), Math.min(whole.right(), zone.right())) + 1,
            box.bottom() + 1);
    return Optional.of(new Region(clipped, caption, sure));
  }

  /** The nearest caption right above, or else right below. */
  private Optional<Caption> captionOf(Box box) {
    Optional<Caption> above =
        captions.stream()
            .filter(c -> c.box().bottom() <= box.top() + 2 && box.top() - c.box().bottom() < 60)
            .filter(c -> c.box().sharedWidth(box) > 0)
            .max(Comparator.comparingDouble(c -> c.box().bottom()));
    return above.isPresent()
        ? above
        : captions.stream()
            .filter(c -> c.box().top() >= box.bottom() - 2 && c.box().top() - box.bottom() < 24)
            .filter(c -> c.box().sharedWidth(box) > 0)
            .min(Comparator.comparingDouble(c -> c.box().top()));
  }
}
