package gapwise.figure.timeline;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Axis;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One track: the case as a bar of numbered phases with its milestones above, pooled times below, an
 * axis of months from the one moment.
 */
record TimelineTrack(Timeline.Track track, Style style, Ticks ticks) implements PagePart {
  /** Share of the width that the names take where they stand beside the axis. */
  private static final double NAMES = 0.27;

  private static final double VALUES = 0.17;

  /** A milestone's words and the line above the bar on which they stand. */
  private record Label(String words, double x, Svg.Anchor anchor, int line) {}

  private boolean stacked() {
    return style.sheet().stacked();
  }

  private double left() {
    return style.sheet().margin() + (stacked() ? 0 : style.sheet().room() * NAMES);
  }

  private double right() {
    return style.sheet().right() - (stacked() ? 8 : style.sheet().room() * VALUES);
  }

  private Axis axis() {
    return new Axis(Quantity.mean("months"), ticks, left(), right());
  }

  private double line() {
    return style.type().small() * 1.45;
  }

  private double row() {
    return style.rhythm().pitch() * 1.05 + (stacked() ? line() : 0);
  }

  private double bar() {
    return style.rhythm().bone() * 1.25;
  }

  private int labelLines() {
    return labels().stream().mapToInt(Label::line).max().orElse(-1) + 1;
  }

  @Override
  public double height() {
    return line() * (3.9 + labelLines()) + bar() * 1.8 + rows();
  }

  /** Pooled times by milestone, under the name of each. */
  private Map<String, List<Timeline.Pooled>> byMilestone() {
    return track.pooled().stream()
        .collect(
            Collectors.groupingBy(
                Timeline.Pooled::milestone, LinkedHashMap::new, Collectors.toList()));
  }

  private double rows() {
    return row() * track.pooled().size() + line() * 1.3 * byMilestone().size();
  }

  @Override
  public void draw(Svg svg, double top) {
    svg.open("g", "data-part", "track");
    double y = top + line() * 1.5;
    Lettering bold = style.bold();
    String heading = say("figure.months-from", Map.of("origin", track.origin()));
    svg.text(style.sheet().margin(), y, Svg.Anchor.START, bold, heading);
    double barTop = y + line() * (labelLines() + 0.8);
    double bottom = barTop + bar() * 1.8 + rows();
    grid(svg, barTop, bottom);
    course(svg, barTop);
    milestones(svg, barTop);
    double down = barTop + bar() * 1.8;
    for (Map.Entry<String, List<Timeline.Pooled>> group : byMilestone().entrySet()) {
      down += line() * 1.3;
      Lettering small = Lettering.bold(style.type().small());
      String words = TextMeasure.shorten(upper(group.getKey()), small, style.sheet().room());
      svg.text(style.sheet().margin(), down - line() * 0.3, Svg.Anchor.START, small, words);
      for (Timeline.Pooled pooled : group.getValue()) {
        pooled(svg, pooled, down + row() / 2);
        down += row();
      }
    }
    ticks(svg, bottom);
    svg.close("g");
  }

  private static String upper(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private void grid(Svg svg, double top, double bottom) {
    for (double x : axis().tickPositions()) {
      svg.line(x, top, x, bottom, Ink.GRID, 1);
    }
    svg.line(left(), bottom, right(), bottom, Ink.SOFT, 1);
  }

  private void ticks(Svg svg, double bottom) {
    double[] places = axis().tickPositions();
    List<String> words = axis().tickWords();
    Lettering small = style.small();
    for (int i = 0; i < places.length; i++) {
      svg.text(places[i], bottom + line(), Svg.Anchor.MIDDLE, small, words.get(i));
    }
  }

  private void course(Svg svg, double top) {
    if (!stacked()) {
      double baseline = top + bar() / 2 + style.bold().middleToBaseline();
      svg.text(
          style.sheet().margin(), baseline, Svg.Anchor.START, style.bold(), say("figure.the-case"));
    }
    List<Timeline.Stretch> after =
        track.course().stream().filter(one -> one.toMonths() > 0).toList();
    if (after.isEmpty()) {
      double last = track.reached().stream().mapToDouble(Timeline.Reached::months).max().orElse(0);
      svg.line(left(), top + bar() / 2, axis().x(last), top + bar() / 2, Ink.INK, 1.6);
    }
    for (Timeline.Stretch one : after) {
      double from = axis().x(Math.max(0, one.fromMonths()));
      double to = axis().x(one.toMonths());
      svg.open("g", "data-part", "phase");
      svg.element("title", one.title());
      TimelineKey.phase(svg, one.load(), from, top, to - from, bar());
      Lettering number = number(one.load());
      String words = Integer.toString(one.number());
      if (number.width(words) < to - from - 2) {
        double baseline = top + bar() / 2 + number.middleToBaseline();
        svg.text((from + to) / 2, baseline, Svg.Anchor.MIDDLE, number, words);
      }
      svg.close("g");
    }
  }

  private Lettering number(Timeline.Load load) {
    Lettering number = Lettering.bold(style.type().small());
    return TimelineKey.isDark(load) ? number.in(Ink.GROUND) : number;
  }

  private void milestones(Svg svg, double top) {
    for (Timeline.Reached one : track.reached()) {
      double x = axis().x(one.months());
      svg.path(
          "M"
              + Svg.at(x - 4.5, top - 8)
              + "L"
              + Svg.at(x + 4.5, top - 8)
              + "L"
              + Svg.at(x, top - 0.5)
              + "Z",
          Ink.INK);
    }
    for (Label label : labels()) {
      double baseline = top - 11 - line() * label.line();
      svg.text(label.x(), baseline, label.anchor(), style.small().in(Ink.INK), label.words());
    }
  }

  /** Each label on the lowest line above the bar on which it meets no other. */
  private List<Label> labels() {
    List<Label> labels = new ArrayList<>();
    List<double[]> taken = new ArrayList<>();
    double start = stacked() ? style.sheet().margin() : left();
    for (Timeline.Reached one : track.reached()) {
      String full =
          say(
              "figure.milestone",
              Map.of("milestone", one.milestone(), "months", Shown.months(one.months())));
      String words = TextMeasure.shorten(full, style.small(), right() - start);
      double width = style.small().width(words);
      double x = axis().x(one.months());
      boolean before = x + width > style.sheet().right();
      double from = before ? Math.max(start, x - width) : x;
      int line = 0;
      while (meets(taken, line, from, from + width)) {
        line++;
      }
      taken.add(new double[] {line, from, from + width});
      labels.add(new Label(words, from, Svg.Anchor.START, line));
    }
    return labels;
  }

  private boolean meets(List<double[]> taken, int line, double from, double to) {
    double room = style.type().small();
    return taken.stream()
        .anyMatch(one -> one[0] == line && from < one[2] + room && to > one[1] - room);
  }

  private void pooled(Svg svg, Timeline.Pooled pooled, double middle) {
    svg.open("g", "data-part", "pooled");
    svg.element("title", TimelineTable.words(pooled));
    Style.Sheet sheet = style.sheet();
    double names = stacked() ? middle - row() / 2 + line() * 0.7 : middle;
    double marks = stacked() ? middle + line() / 2 : middle;
    Lettering text = style.small().in(Ink.INK);
    double radius = style.type().small() * 0.5;
    MethodShape.draw(svg, pooled.method(), sheet.margin() + radius, names, radius);
    String name =
        say(
            "figure.method-of-series",
            Map.of("method", pooled.method().label(), "series", Integer.toString(pooled.series())));
    double room = stacked() ? sheet.room() * 0.66 : left() - sheet.margin() - radius * 4 - 6;
    svg.text(
        sheet.margin() + radius * 3.2,
        names + text.middleToBaseline(),
        Svg.Anchor.START,
        text,
        TextMeasure.shorten(name, text, room),
        name);
    svg.text(
        sheet.right(),
        names + text.middleToBaseline(),
        Svg.Anchor.END,
        text,
        TimelineTable.value(pooled));
    double half = style.rhythm().pitch() * 0.26;
    pooled
        .prediction()
        .ifPresent(limits -> Marks.band(svg, axis(), limits, marks + half * 0.4, half));
    Marks.rhombus(svg, axis(), pooled.average(), marks - half * 0.2, half * 0.9);
    Optional<Timeline.Reached> own = track.of(pooled.milestone());
    own.ifPresent(
        one -> {
          double x = axis().x(one.months());
          // A stacked name stands right above: the line stays below its letters.
          double up = half * (stacked() ? 1.3 : 1.7);
          svg.dashed(x, marks - up, x, marks + half * 1.7, Ink.INK, 1.6, "3 2");
        });
    svg.close("g");
  }
}
