package gapwise.figure.funnel;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Marks;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Limits;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The field of a funnel plot with its two axes: precise series at the top.
 *
 * @param funnel the figure
 * @param style sizes
 * @param fieldHeight height of the field
 */
record FunnelPlot(Funnel funnel, Style style, double fieldHeight) implements PagePart {
  private static final double SIZES_PER_TICK = 4;

  private Lettering small() {
    return style.small();
  }

  private double line() {
    return style.type().small() * 1.45;
  }

  private double left() {
    return style.sheet().margin() + small().width("0.000") + small().size() * 0.8;
  }

  private double right() {
    return style.sheet().right() - small().size();
  }

  private FunnelScale.Stretch effects() {
    Limits reach = funnel.reach();
    int most =
        (int) Math.max(4, Math.min(9, (right() - left()) / (SIZES_PER_TICK * small().size())));
    return funnel.scale().covering(reach.lower(), reach.upper(), most);
  }

  private Ticks errors() {
    double largest = funnel.largestError();
    return Ticks.linear(0, largest > 0 ? largest * 1.02 : 1, 7);
  }

  @Override
  public double height() {
    int lines = headingLines().size() + Math.max(lowerLines().size(), higherLines().size());
    return line() * (2.9 + lines) + fieldHeight;
  }

  @Override
  public void draw(Svg svg, double top) {
    double fieldTop = top + line() * 1.7;
    FunnelField field =
        new FunnelField(left(), right(), fieldTop, fieldTop + fieldHeight, effects(), errors());
    svg.open("g", "data-part", "field");
    funnel.contours().ifPresent(contours -> FunnelShades.draw(svg, contours, field));
    grid(svg, field);
    lines(svg, field);
    svg.close("g");
    points(svg, field);
    words(svg, field, top);
  }

  private static void grid(Svg svg, FunnelField field) {
    StringBuilder path = new StringBuilder();
    for (FunnelScale.Tick tick : field.x().ticks()) {
      path.append('M').append(Svg.at(field.x(tick.at()), field.bottom()));
      path.append('V').append(Svg.n(field.bottom() + 4));
    }
    for (double tick : field.y().values().stream().mapToDouble(Number::doubleValue).toArray()) {
      path.append('M').append(Svg.at(field.left() - 4, field.y(tick)));
      path.append('H').append(Svg.n(field.left()));
    }
    path.append('M').append(Svg.at(field.left(), field.top()));
    path.append('V').append(Svg.n(field.bottom())).append('H').append(Svg.n(field.right()));
    svg.stroke(path.toString(), Ink.SOFT, 1);
  }

  private void lines(Svg svg, FunnelField field) {
    funnel
        .contours()
        .map(Funnel.Contours::noEffect)
        .ifPresent(
            none -> {
              double x = field.x(none);
              svg.dashed(x, field.top(), x, field.bottom(), Ink.INK, 1.1, "1.2 3");
            });
    if (funnel.centre().isEmpty()) {
      return;
    }
    Funnel.Centre centre = funnel.centre().get();
    double x = field.x(centre.effect());
    svg.line(x, field.top(), x, field.bottom(), Ink.ACCENT, 1.6);
    // The lines end where the least precise series does, which the axis is made to cover.
    double error = funnel.largestError();
    for (int side : new int[] {-1, 1}) {
      double end = field.x(centre.effect() + side * centre.multiplier() * error);
      svg.dashed(x, field.top(), end, field.y(error), Ink.ACCENT, 1.4, "7 3");
    }
  }

  private void points(Svg svg, FunnelField field) {
    double radius = style.rhythm().lensRadius() * 0.42;
    for (Funnel.Point point : funnel.imagined()) {
      svg.open("g", "data-part", "imagined");
      svg.element("title", title(point));
      Marks.ring(svg, field.x(point.effect()), field.y(point.standardError()), radius);
      svg.close("g");
    }
    for (Funnel.Point point : funnel.points()) {
      svg.open("g", "data-part", "series");
      svg.element("title", title(point));
      disc(svg, field.x(point.effect()), field.y(point.standardError()), radius);
      svg.close("g");
    }
  }

  /** A disc with a bright edge, so that series that lie on each other can be counted. */
  static void disc(Svg svg, double x, double y, double radius) {
    svg.empty(
        "circle",
        "cx",
        Svg.n(x),
        "cy",
        Svg.n(y),
        "r",
        Svg.n(radius),
        "fill",
        Ink.INK,
        "stroke",
        Ink.GROUND,
        "stroke-width",
        "1");
  }

  private String title(Funnel.Point point) {
    String error = String.format(Locale.ROOT, "%.3g", point.standardError());
    return say(
        "figure.one-dot",
        Map.of(
            "series",
            point.label(),
            "value",
            funnel.scale().shown(point.effect()),
            "error",
            error));
  }

  private void words(Svg svg, FunnelField field, double top) {
    svg.open("g", "data-part", "axis");
    double down = small().middleToBaseline();
    svg.text(
        style.sheet().margin(),
        top + line() * 0.7 + down,
        Svg.Anchor.START,
        small(),
        say("figure.axis-of-error"));
    double free = Double.NEGATIVE_INFINITY;
    double middle = field.bottom() + line() * 0.85;
    for (FunnelScale.Tick tick : field.x().ticks()) {
      double half = small().width(tick.words()) / 2;
      double x = field.x(tick.at());
      if (x - half > free && x + half < style.sheet().width()) {
        svg.text(x, middle + down, Svg.Anchor.MIDDLE, small(), tick.words());
        free = x + half + small().size() * 0.4;
      }
    }
    field
        .y()
        .values()
        .forEach(
            tick ->
                svg.text(
                    field.left() - 7,
                    field.y(tick.doubleValue()) + down,
                    Svg.Anchor.END,
                    small(),
                    tick.signum() == 0 ? "0" : tick.stripTrailingZeros().toPlainString()));
    svg.close("g");
    double centre = (field.left() + field.right()) / 2;
    double y = column(svg, headingLines(), centre, Svg.Anchor.MIDDLE, bold(), middle + line());
    column(svg, lowerLines(), field.left(), Svg.Anchor.START, small(), y);
    column(svg, higherLines(), field.right(), Svg.Anchor.END, small(), y);
  }

  private double column(
      Svg svg, List<String> lines, double x, Svg.Anchor anchor, Lettering letters, double middle) {
    double y = middle;
    for (String words : lines) {
      svg.text(x, y + letters.middleToBaseline(), anchor, letters, words);
      y += line();
    }
    return y;
  }

  private Lettering bold() {
    return Lettering.bold(style.type().small());
  }

  private List<String> headingLines() {
    return TextMeasure.wrap(funnel.axis().heading(), bold(), right() - left());
  }

  private List<String> lowerLines() {
    String words = funnel.axis().lower();
    return words.isBlank() ? List.of() : direction("\u2190\u00a0" + words);
  }

  private List<String> higherLines() {
    String words = funnel.axis().higher();
    return words.isBlank() ? List.of() : direction(words + "\u00a0\u2192");
  }

  private List<String> direction(String words) {
    return TextMeasure.wrap(words, small(), (right() - left()) / 2 - small().size());
  }
}
