package gapwise.figure.flow;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Boxes one below another, joined by strokes with a point, and beside each the box of what leaves.
 * What goes on is filled and what leaves is an outline, so that grey print tells them apart.
 *
 * @param chart the flow
 * @param style sizes
 * @param gap room between two steps
 */
record FlowPlot(FlowChart chart, Style style, double gap) implements PagePart {
  /** Share of the width between the two columns. */
  private static final double BETWEEN = 0.07;

  /** One line of a box: words to the left, a count to the right of its first line. */
  private record Line(String words, String count, Lettering letters) {}

  private double text() {
    return style.type().text();
  }

  private double line() {
    return text() * 1.4;
  }

  private double pad() {
    return text() * 0.6;
  }

  private double columnWidth() {
    return style.sheet().room() * (1 - BETWEEN) / 2;
  }

  private List<Line> lines(FlowChart.Box box) {
    List<Line> lines = new ArrayList<>();
    add(lines, box.name(), box.count(), Lettering.bold(text()));
    for (FlowChart.Part part : box.parts()) {
      add(lines, part.name(), part.count(), Lettering.plain(style.type().small()));
    }
    return lines;
  }

  private void add(List<Line> lines, String name, int count, Lettering letters) {
    String told = String.format(Locale.ROOT, "%,d", count);
    double room = columnWidth() - 2 * pad() - letters.width(told) - text() * 0.8;
    List<String> wrapped = TextMeasure.wrap(name, letters, room);
    for (int i = 0; i < wrapped.size(); i++) {
      lines.add(new Line(wrapped.get(i), i == 0 ? told : "", letters));
    }
  }

  private double boxHeight(FlowChart.Box box) {
    return lines(box).size() * line() + 2 * pad();
  }

  private double stepHeight(FlowChart.Step step) {
    return Math.max(boxHeight(step.main()), step.leaving().map(this::boxHeight).orElse(0.0));
  }

  @Override
  public double height() {
    return chart.steps().stream().mapToDouble(this::stepHeight).sum()
        + gap * (chart.steps().size() - 1)
        + text();
  }

  @Override
  public void draw(Svg svg, double top) {
    double y = top + text() * 0.5;
    double left = style.sheet().margin();
    double right = style.sheet().right() - columnWidth();
    for (int i = 0; i < chart.steps().size(); i++) {
      FlowChart.Step step = chart.steps().get(i);
      double height = stepHeight(step);
      double own = boxHeight(step.main());
      double middle = y + own / 2;
      if (step.leaving().isPresent()) {
        across(svg, left + columnWidth(), right, middle);
        double beside = boxHeight(step.leaving().get());
        box(svg, step.leaving().get(), right, Math.max(y, middle - beside / 2), false);
      }
      if (i + 1 < chart.steps().size()) {
        down(svg, left + columnWidth() / 2, y + own, y + height + gap);
      }
      box(svg, step.main(), left, y, true);
      y += height + gap;
    }
  }

  private void box(Svg svg, FlowChart.Box box, double x, double y, boolean goesOn) {
    double height = boxHeight(box);
    String outline =
        "M"
            + Svg.at(x, y)
            + "h"
            + Svg.n(columnWidth())
            + "v"
            + Svg.n(height)
            + "H"
            + Svg.n(x)
            + "Z";
    svg.open("g", "data-part", "box");
    svg.shape(outline, goesOn ? Ink.GRID : Ink.GROUND, Ink.SOFT, text() * 0.08, "");
    double middle = y + pad() + line() / 2;
    for (Line one : lines(box)) {
      double baseline = middle + one.letters().middleToBaseline();
      svg.text(x + pad(), baseline, Svg.Anchor.START, one.letters(), one.words());
      if (!one.count().isEmpty()) {
        svg.text(x + columnWidth() - pad(), baseline, Svg.Anchor.END, one.letters(), one.count());
      }
      middle += line();
    }
    svg.close("g");
  }

  private void down(Svg svg, double x, double from, double to) {
    double point = text() * 0.4;
    svg.line(x, from, x, to - point, Ink.SOFT, text() * 0.1);
    svg.path(
        "M" + Svg.at(x - point, to - point) + "H" + Svg.n(x + point) + "L" + Svg.at(x, to) + "Z",
        Ink.SOFT);
  }

  private void across(Svg svg, double from, double to, double y) {
    double point = text() * 0.4;
    svg.line(from, y, to - point, y, Ink.SOFT, text() * 0.1);
    svg.path(
        "M" + Svg.at(to - point, y - point) + "V" + Svg.n(y + point) + "L" + Svg.at(to, y) + "Z",
        Ink.SOFT);
  }
}
