package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Map;

/**
 * The plane with its axes and, beyond its corners, what each quarter means.
 *
 * @param plane the figure
 * @param style sizes
 * @param fieldHeight height of the field
 */
record PlanePlot(Plane plane, Style style, double fieldHeight) implements PagePart {
  /** A mark of a draw, so that hundreds can be told from each other. */
  private static final double DRAW = 0.42;

  private static final double MEAN = 0.85;

  /** Lines left free above the heading. */
  static final double HEAD = 0.6;

  private static final double LEAST_DRAW = 3.4;

  private static final String[] UPPER = {
    say("figure.plane-dearer-worse"), say("figure.plane-dearer-better")
  };

  private static final String[] LOWER = {
    say("figure.plane-cheaper-worse"), say("figure.plane-cheaper-better")
  };

  private Lettering small() {
    return style.small();
  }

  private double line() {
    return style.type().small() * 1.45;
  }

  private Field field(double top) {
    Limits effects = plane.effects();
    Limits costs = plane.costs();
    return new Field(
        style,
        top,
        fieldHeight,
        Ticks.linear(effects.lower(), effects.upper(), Field.mostAcross(style)),
        Ticks.linear(costs.lower(), costs.upper(), 8));
  }

  private List<String> upLines() {
    return TextMeasure.wrap(plane.up(), bold(), style.sheet().room());
  }

  private List<String> acrossLines() {
    return TextMeasure.wrap(plane.across(), bold(), style.sheet().room());
  }

  private Lettering bold() {
    return Lettering.bold(style.type().small());
  }

  private int lines(String[] words) {
    Field field = field(0);
    return Math.max(field.half(words[0]).size(), field.half(words[1]).size());
  }

  private double above() {
    return line() * (HEAD + upLines().size() + lines(UPPER) + 0.9);
  }

  @Override
  public double height() {
    return above() + fieldHeight + line() * (lines(LOWER) + acrossLines().size() + 1.9);
  }

  @Override
  public void draw(Svg svg, double top) {
    Field field = field(top + above());
    svg.open("g", "data-part", "field");
    field.edges(svg);
    double x = field.x(0);
    double y = field.y(0);
    svg.line(x, field.top(), x, field.bottom(), Ink.INK, 1.2);
    svg.line(field.left(), y, field.right(), y, Ink.INK, 1.2);
    svg.close("g");
    clouds(svg, field);
    words(svg, field, top);
  }

  private void clouds(Svg svg, Field field) {
    double radius = Math.max(LEAST_DRAW, style.rhythm().lensRadius() * DRAW);
    for (Cloud cloud : plane.clouds()) {
      svg.open("g", "data-part", "draws");
      svg.element("title", cloud.kind().label());
      for (Cloud.Spot spot : cloud.shown()) {
        MethodShape.draw(svg, cloud.kind(), field.x(spot.effect()), field.y(spot.cost()), radius);
      }
      svg.close("g");
    }
    double large = style.rhythm().lensRadius() * MEAN;
    for (Cloud cloud : plane.clouds()) {
      svg.open("g", "data-part", "mean");
      svg.element(
          "title",
          say(
              "figure.plane-mean-title",
              Map.of(
                  "method",
                  cloud.kind().label(),
                  "effect",
                  Shown.difference(cloud.mean().effect(), plane.effect()),
                  "cost",
                  Shown.difference(cloud.mean().cost(), plane.cost()))));
      double x = field.x(cloud.mean().effect());
      double y = field.y(cloud.mean().cost());
      halo(svg, x, y, large * 1.45);
      MethodShape.draw(svg, cloud.kind(), x, y, large);
      svg.close("g");
    }
  }

  /** What sets a mean off from the draws behind it. */
  static void halo(Svg svg, double x, double y, double radius) {
    svg.empty(
        "circle",
        "cx",
        Svg.n(x),
        "cy",
        Svg.n(y),
        "r",
        Svg.n(radius),
        "fill",
        Ink.GROUND,
        "stroke",
        Ink.INK,
        "stroke-width",
        "1.4");
  }

  private void words(Svg svg, Field field, double top) {
    svg.open("g", "data-part", "axis");
    double heading = top + line() * HEAD;
    double y = column(svg, upLines(), style.sheet().margin(), Svg.Anchor.START, bold(), heading);
    corners(svg, field, UPPER, y + line() * 0.3);
    field.numbers(svg, field.bottom() + line() * 0.85);
    double below = field.bottom() + line() * 1.45;
    corners(svg, field, LOWER, below);
    double middle = style.sheet().margin() + style.sheet().room() / 2;
    double across = below + line() * (lines(LOWER) + 0.2);
    column(svg, acrossLines(), middle, Svg.Anchor.MIDDLE, bold(), across);
    svg.close("g");
  }

  private void corners(Svg svg, Field field, String[] words, double top) {
    column(svg, field.half(words[0]), field.left(), Svg.Anchor.START, small(), top);
    column(svg, field.half(words[1]), field.right(), Svg.Anchor.END, small(), top);
  }

  private double column(
      Svg svg, List<String> lines, double x, Svg.Anchor anchor, Lettering letters, double top) {
    double y = top;
    for (String words : lines) {
      svg.text(x, y + line() / 2 + letters.middleToBaseline(), anchor, letters, words);
      y += line();
    }
    return y;
  }
}
