package gapwise.figure.curve;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Limits;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The plot of curves with its axes, its direct labels and the patients at risk below. */
final class CurvePlot implements PagePart {
  private static final int[] HEIGHTS = {0, 25, 50, 75, 100};

  private final CurveFigure figure;
  private final Style style;
  private final double plotHeight;
  private final double left;
  private final double right;
  private final double labels;
  private final Ticks ticks;

  CurvePlot(CurveFigure figure, Style style, double plotHeight) {
    this.figure = figure;
    this.style = style;
    this.plotHeight = plotHeight;
    Style.Sheet sheet = style.sheet();
    double longest =
        figure.curves().stream().mapToDouble(c -> style.text().width(c.name())).max().orElse(0);
    boolean beside = !sheet.stacked();
    // On a slide the names stand once, beside those still followed, so that the plot is wide.
    boolean once = sheet.landscape() && hasAtRisk();
    double longestLabel =
        figure.curves().stream()
            .mapToDouble(c -> (c.pooled() ? style.bold() : style.text()).width(c.name()))
            .max()
            .orElse(0);
    labels = beside && !once ? Math.min(longestLabel, sheet.room() * 0.26) : 0;
    double row = longest + sample() + 1.4 * gap() + halfNumber();
    double names = beside ? Math.min(row, sheet.room() * (once ? 0.34 : 0.3)) : 0;
    left = sheet.margin() + Math.max(names, style.small().width("100") + gap());
    right = sheet.right() - (labels > 0 ? labels + 2.5 * gap() : style.small().width("00") / 2);
    ticks = figure.timeTicks();
  }

  private double gap() {
    return style.type().small() * 0.7;
  }

  private double sample() {
    return style.type().text() * 2;
  }

  /** How far a number of patients stands out to the left of the start of the axis. */
  private double halfNumber() {
    return style.small().width("000") / 2;
  }

  private double headHeight() {
    return style.type().small() * 2;
  }

  private double axisHeight() {
    return style.type().small() * 3.4;
  }

  private boolean hasAtRisk() {
    return figure.curves().stream().anyMatch(curve -> !curve.atRisk().isEmpty());
  }

  private double riskRow() {
    return style.type().text() * (style.sheet().stacked() ? 3 : 1.65);
  }

  private double riskHeight() {
    return hasAtRisk() || style.sheet().stacked()
        ? style.type().small() * 2 + riskRow() * figure.curves().size()
        : 0;
  }

  @Override
  public double height() {
    return headHeight() + plotHeight + axisHeight() + riskHeight();
  }

  private double x(double time) {
    double share = (time - ticks.lower()) / (ticks.upper() - ticks.lower());
    return left + share * (right - left);
  }

  @Override
  public void draw(Svg svg, double top) {
    double above = top + headHeight();
    Lettering soft = style.small();
    svg.text(
        style.sheet().margin(), top + headHeight() * 0.55, Svg.Anchor.START, soft, figure.value());
    axes(svg, above);
    figure.curves().forEach(curve -> band(svg, above, curve));
    figure.curves().forEach(curve -> line(svg, above, curve));
    if (labels > 0) {
      names(svg, above);
    }
    if (riskHeight() > 0) {
      atRisk(svg, above + plotHeight + axisHeight());
    }
  }

  private double y(double above, double share) {
    return above + plotHeight * (1 - figure.height(share));
  }

  private void axes(Svg svg, double above) {
    Lettering soft = style.small();
    for (int height : HEIGHTS) {
      double y = above + plotHeight * (1 - height / 100.0);
      svg.line(left, y, right, y, height == 0 ? Ink.SOFT : Ink.GRID, 1);
      svg.text(left - gap(), y + soft.middleToBaseline(), Svg.Anchor.END, soft, "" + height);
    }
    double below = above + plotHeight;
    for (int i = 0; i < ticks.values().size(); i++) {
      double x = x(ticks.values().get(i).doubleValue());
      svg.line(x, below, x, below + gap() * 0.6, Ink.SOFT, 1);
      String words = ticks.values().get(i).stripTrailingZeros().toPlainString();
      svg.text(x, below + soft.size() * 1.5, Svg.Anchor.MIDDLE, soft, words);
    }
    double middle = (left + right) / 2;
    svg.text(middle, below + soft.size() * 2.9, Svg.Anchor.MIDDLE, soft, figure.time());
  }

  /** One band is shaded; more would hide each other and have an edge alone. */
  private Curve firstWithLimits() {
    return figure.withLimits().get(0);
  }

  /** Limits of a pooled curve as a band of steps; they are lighter than any line. */
  private void band(Svg svg, double above, Curve curve) {
    StringBuilder there = new StringBuilder();
    List<String> back = new ArrayList<>();
    List<Curve.Step> steps = curve.steps().stream().filter(s -> s.limits().isPresent()).toList();
    for (int i = 0; i < steps.size(); i++) {
      double from = x(steps.get(i).time());
      double to = x(i + 1 < steps.size() ? steps.get(i + 1).time() : curve.end());
      Limits limits = steps.get(i).limits().orElseThrow();
      double upper = y(above, limits.upper());
      double lower = y(above, limits.lower());
      there.append(i == 0 ? 'M' : 'L').append(Svg.at(from, upper)).append('H').append(Svg.n(to));
      back.add(0, "L" + Svg.at(to, lower) + "H" + Svg.n(from));
    }
    if (!steps.isEmpty()) {
      String outline = there + String.join("", back) + "Z";
      if (curve.equals(firstWithLimits())) {
        svg.path(outline, Ink.BONE);
      } else {
        svg.shape(outline, "none", Ink.BONE_EDGE, 0.9, "2 3");
      }
    }
  }

  private void line(Svg svg, double above, Curve curve) {
    StringBuilder path = new StringBuilder("M" + Svg.at(x(0), y(above, 1)));
    for (Curve.Step step : curve.steps()) {
      path.append('H').append(Svg.n(x(step.time())));
      path.append('V').append(Svg.n(y(above, step.share())));
    }
    path.append('H').append(Svg.n(x(curve.end())));
    svg.open("g", "data-part", "curve");
    svg.element("title", curve.name());
    CurveStroke stroke = CurveStroke.of(figure, curve);
    stroke.draw(svg, path.toString());
    StringBuilder marks = new StringBuilder();
    double half = style.type().small() * 0.33;
    for (double time : curve.lastSeen()) {
      double y = y(above, curve.shareAt(time));
      marks.append('M').append(Svg.at(x(time), y - half)).append('V').append(Svg.n(y + half));
    }
    if (!marks.isEmpty()) {
      svg.stroke(marks.toString(), stroke.colour(), 1.1);
    }
    svg.close("g");
  }

  /** Names at the right, each level with the end of its curve or as near as the others allow. */
  private void names(Svg svg, double above) {
    double pitch = style.type().text() * 1.3;
    List<Curve> order =
        figure.curves().stream()
            .sorted(Comparator.comparingDouble(c -> y(above, c.shareAt(c.end()))))
            .toList();
    double[] ends = order.stream().mapToDouble(c -> y(above, c.shareAt(c.end()))).toArray();
    double[] places = ends.clone();
    for (int i = 0; i < places.length; i++) {
      double least = i == 0 ? above + pitch / 2 : places[i - 1] + pitch;
      places[i] = Math.max(places[i], least);
    }
    for (int i = places.length - 1; i >= 0; i--) {
      double most = i == places.length - 1 ? above + plotHeight : places[i + 1] - pitch;
      places[i] = Math.min(places[i], most);
    }
    IntStream.range(0, places.length).forEach(i -> name(svg, order.get(i), ends[i], places[i]));
  }

  private void name(Svg svg, Curve curve, double end, double place) {
    CurveStroke stroke = CurveStroke.of(figure, curve);
    double x = right + 2.2 * gap();
    svg.dashed(x(curve.end()), end, x - gap() * 0.4, place, Ink.SOFT, 0.8, "1.2 2.4");
    Lettering lettering = curve.pooled() ? style.bold().in(stroke.colour()) : style.text();
    svg.text(
        x,
        place + lettering.middleToBaseline(),
        Svg.Anchor.START,
        lettering,
        TextMeasure.shorten(curve.name(), lettering, labels + gap() * 0.3));
  }

  private void atRisk(Svg svg, double top) {
    Lettering soft = style.small();
    double margin = style.sheet().margin();
    String words = say(hasAtRisk() ? "figure.still-followed" : "figure.lines");
    svg.text(margin, top + soft.size(), Svg.Anchor.START, soft, words);
    double row = top + soft.size() * 2;
    for (Curve curve : figure.curves()) {
      double nameLine = row + style.type().text() * 0.7;
      CurveStroke.of(figure, curve)
          .draw(svg, "M" + Svg.at(margin, nameLine) + "H" + Svg.n(margin + sample()));
      double from = margin + sample() + gap() * 0.6;
      double to =
          style.sheet().stacked() ? style.sheet().right() : left - halfNumber() - gap() * 0.6;
      svg.text(
          from,
          nameLine + style.text().middleToBaseline(),
          Svg.Anchor.START,
          style.text(),
          TextMeasure.shorten(curve.name(), style.text(), to - from));
      double numbers = nameLine + (style.sheet().stacked() ? style.type().text() * 1.4 : 0);
      for (Curve.AtRisk mark : curve.atRisk()) {
        if (mark.time() <= ticks.upper()) {
          svg.text(
              x(mark.time()),
              numbers + soft.middleToBaseline(),
              Svg.Anchor.MIDDLE,
              soft.in(Ink.INK),
              "" + mark.patients());
        }
      }
      row += riskRow();
    }
  }
}
