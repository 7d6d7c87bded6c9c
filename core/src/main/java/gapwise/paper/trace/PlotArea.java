package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Line;
import gapwise.paper.Page;
import gapwise.paper.Stretches;
import gapwise.paper.Word;
import gapwise.paper.Word.Turn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A figure with numbers below and beside it.
 *
 * @param below numbers along the level axis
 * @param beside numbers along the upright axis
 * @param box between the first and last numbers
 */
record PlotArea(Page page, Ticks below, Ticks beside, Box box) {
  private static final Pattern UNIT =
      Pattern.compile("(?i).*\\b(day|week|month|year)s?\\b.*|.*\\((d|wk?s?|mo|m|yr?s?)\\).*");

  private static final Pattern CAPTION =
      Pattern.compile("(?i)(figure|fig\\.?|abb\\.?|abbildung) ?[0-9]{1,2}\\b.*");

  /** Axes whose numbers frame an area, each used once, the nearest with the nearest. */
  static List<PlotArea> on(Page page) {
    List<Ticks> all = Ticks.on(page);
    List<PlotArea> pairs = new ArrayList<>();
    for (Ticks below : all) {
      for (Ticks beside : all) {
        if (below.level() && !beside.level()) {
          frame(page, below, beside).ifPresent(pairs::add);
        }
      }
    }
    pairs.sort(Comparator.comparingDouble(PlotArea::away));
    List<PlotArea> kept = new ArrayList<>();
    for (PlotArea pair : pairs) {
      if (kept.stream().noneMatch(k -> k.box.meets(pair.box))) {
        kept.add(pair);
      }
    }
    kept.sort(Comparator.comparingDouble(k -> k.box.top()));
    return kept;
  }

  private static Optional<PlotArea> frame(Page page, Ticks below, Ticks beside) {
    double left = below.first().at();
    double right = below.last().at();
    double bottom = beside.first().at();
    double top = beside.last().at();
    boolean sized = right - left > 50 && bottom - top > 40;
    double under = below.box().top() - bottom;
    double before = left - beside.box().right();
    boolean near = under > -4 && under < 45 && before > -6 && before < 60;
    return sized && near
        ? Optional.of(new PlotArea(page, below, beside, new Box(left, top, right, bottom)))
        : Optional.empty();
  }

  private double away() {
    return Math.abs(below.box().top() - box.bottom()) + Math.abs(box.left() - beside.box().right());
  }

  Scale besideScale() {
    AxisFit fit = AxisFit.of(beside.ticks());
    boolean percent =
        beside.saysPercent() || besideTitle().contains("%") || beside.last().value() == 100;
    return fit.scale() == Scale.LINEAR && percent && beside.last().value() > 1.5
        ? Scale.PERCENT
        : fit.scale();
  }

  Axes axes() {
    Scale along = AxisFit.of(below.ticks()).scale();
    Axis x =
        new Axis(
            along,
            new Axis.Mark(new Point(below.first().at(), box.bottom()), below.first().value()),
            new Axis.Mark(new Point(below.last().at(), box.bottom()), below.last().value()));
    Axis y =
        new Axis(
            besideScale(),
            new Axis.Mark(new Point(box.left(), beside.first().at()), beside.first().value()),
            new Axis.Mark(new Point(box.left(), beside.last().at()), beside.last().value()));
    return Axes.of(x, y);
  }

  /** Words below the numbers of the level axis; empty if there are none. */
  String belowTitle() {
    Box band =
        new Box(
            Math.max(0, box.left() - 20),
            below.box().bottom(),
            box.right() + 20,
            below.box().bottom() + 26);
    return level().stream()
        .filter(l -> band.holdsMiddleOf(l.box()) && l.text().matches(".*\\p{L}.*"))
        .min(Comparator.comparingDouble(Line::baseline))
        .map(Line::text)
        .orElse("");
  }

  /** Words beside the numbers of the upright axis, mostly turned; empty if there are none. */
  String besideTitle() {
    StringBuilder title = new StringBuilder();
    page.words().stream()
        .filter(w -> w.turn() == Turn.UP || w.turn() == Turn.DOWN)
        .filter(w -> w.box().sharedHeight(box.grown(40)) > 0)
        .filter(w -> w.box().right() < box.left() && w.box().left() > beside.box().left() - 50)
        .forEach(w -> title.append(title.length() > 0 ? " " : "").append(w.text()));
    if (title.length() == 0) {
      Box over =
          new Box(
              Math.max(0, beside.box().left() - 60),
              Math.max(0, box.top() - 40),
              box.left() + 60,
              box.top() - 1);
      level().stream()
          .filter(l -> over.holdsMiddleOf(l.box()))
          .forEach(l -> title.append(l.text()));
    }
    return title.toString();
  }

  /** The unit of time along the level axis, as "months"; empty if no word tells. */
  Optional<String> unit() {
    Matcher matcher = UNIT.matcher(belowTitle());
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String word =
        Optional.ofNullable(matcher.group(1))
            .orElseGet(() -> matcher.group(2))
            .toLowerCase(Locale.ROOT);
    return Optional.of(
        word.startsWith("d")
            ? "days"
            : word.startsWith("w") ? "weeks" : word.startsWith("m") ? "months" : "years");
  }

  /** The words that number the figure, below it or else above; empty if there are none. */
  String caption() {
    return level().stream()
        .filter(l -> CAPTION.matcher(l.text()).matches() && l.box().sharedWidth(box.grown(60)) > 0)
        .filter(l -> l.box().top() > box.bottom() - 2 && l.box().top() < box.bottom() + 220)
        .min(Comparator.comparingDouble(Line::baseline))
        .or(
            () ->
                level().stream()
                    .filter(l -> CAPTION.matcher(l.text()).matches())
                    .filter(l -> l.box().bottom() < box.top() && l.box().bottom() > box.top() - 60)
                    .max(Comparator.comparingDouble(Line::baseline)))
        .map(Line::text)
        .orElse("");
  }

  List<Line> level() {
    return Stretches.of(
        page.words().stream().filter(w -> w.turn() == Word.Turn.NONE).toList(), 0.8);
  }
}
