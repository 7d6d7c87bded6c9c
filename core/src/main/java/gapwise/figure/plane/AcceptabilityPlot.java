package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import java.util.List;

/**
 * Lines of shares over amounts of money, each with the marks of its method, the frontier broad
 * behind them.
 *
 * @param figure the figure
 * @param style sizes
 * @param fieldHeight height of the field
 */
record AcceptabilityPlot(Acceptability figure, Style style, double fieldHeight)
    implements PagePart {
  private static final int HUNDRED = 100;

  /** Marks on each line, those of each method at places of their own. */
  private static final int MARKS = 5;

  private static final double BROAD = 8;

  private double line() {
    return style.type().small() * 1.45;
  }

  private Lettering bold() {
    return Lettering.bold(style.type().small());
  }

  private List<String> upLines() {
    return TextMeasure.wrap(say("figure.acceptability-up"), bold(), style.sheet().room());
  }

  private List<String> acrossLines() {
    return TextMeasure.wrap(figure.amount(), bold(), style.sheet().room());
  }

  private double above() {
    return line() * (PlanePlot.HEAD + upLines().size() + 0.6);
  }

  private Field field(double top) {
    List<Double> amounts = figure.amounts();
    double first = amounts.get(0);
    double last = amounts.get(amounts.size() - 1);
    return new Field(
        style,
        top,
        fieldHeight,
        Ticks.linear(first, last, Field.mostAcross(style)),
        Ticks.linear(0, HUNDRED, 6));
  }

  @Override
  public double height() {
    return above() + fieldHeight + line() * (acrossLines().size() + 1.8);
  }

  @Override
  public void draw(Svg svg, double top) {
    Field field = field(top + above());
    svg.open("g", "data-part", "field");
    field.edges(svg);
    svg.close("g");
    svg.open("g", "data-part", "frontier");
    svg.element("title", say("figure.key-frontier"));
    frontier(svg, frontierPath(field));
    svg.close("g");
    for (int m = 0; m < figure.lines().size(); m++) {
      Acceptability.Line each = figure.lines().get(m);
      svg.open("g", "data-part", "line");
      svg.element("title", each.kind().label());
      stroke(svg, each.kind(), path(field, each));
      marks(svg, field, m);
      svg.close("g");
    }
    words(svg, field, top);
  }

  private double x(Field field, int place) {
    return field.x(figure.amounts().get(place));
  }

  private static double y(Field field, Acceptability.Line line, int place) {
    return field.y(HUNDRED * line.shares().get(place));
  }

  private String path(Field field, Acceptability.Line line) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < figure.amounts().size(); i++) {
      path.append(i == 0 ? 'M' : 'L').append(Svg.at(x(field, i), y(field, line, i)));
    }
    return path.toString();
  }

  /** Along the line of whichever is best, with a jump half way where another becomes it. */
  private String frontierPath(Field field) {
    StringBuilder path = new StringBuilder();
    int last = figure.amounts().size() - 1;
    for (int i = 0; i <= last; i++) {
      Acceptability.Line best = figure.lines().get(figure.best().get(i));
      boolean begins = i == 0 || !figure.best().get(i).equals(figure.best().get(i - 1));
      boolean ends = i < last && !figure.best().get(i).equals(figure.best().get(i + 1));
      if (begins) {
        path.append('M').append(i == 0 ? at(field, best, 0, 0) : at(field, best, i, i - 1));
      }
      path.append('L').append(at(field, best, i, i));
      if (ends) {
        path.append('L').append(at(field, best, i, i + 1));
      }
    }
    return path.toString();
  }

  /** Half way between two places on a line. */
  private String at(Field field, Acceptability.Line line, int one, int other) {
    return Svg.at(
        (x(field, one) + x(field, other)) / 2, (y(field, line, one) + y(field, line, other)) / 2);
  }

  static void frontier(Svg svg, String path) {
    svg.stroke(path, Ink.BONE_GREY, BROAD);
  }

  static void stroke(Svg svg, MethodMark kind, String path) {
    svg.stroke(path, kind.colour(), 1.8);
  }

  static void mark(Svg svg, MethodMark kind, double x, double y, Style style) {
    double radius = style.rhythm().lensRadius() * 0.62;
    svg.empty(
        "circle", "cx", Svg.n(x), "cy", Svg.n(y), "r", Svg.n(radius * 1.2), "fill", Ink.GROUND);
    MethodShape.draw(svg, kind, x, y, radius);
  }

  private void marks(Svg svg, Field field, int method) {
    Acceptability.Line line = figure.lines().get(method);
    int last = figure.amounts().size() - 1;
    double offset = (method + 0.5) / figure.lines().size();
    for (int k = 0; k < MARKS; k++) {
      double place = (k + offset) / MARKS * last;
      int i = (int) Math.min(last - 1.0, Math.floor(place));
      double part = place - i;
      double x = x(field, i) + part * (x(field, i + 1) - x(field, i));
      double y = y(field, line, i) + part * (y(field, line, i + 1) - y(field, line, i));
      mark(svg, line.kind(), x, y, style);
    }
  }

  private void words(Svg svg, Field field, double top) {
    svg.open("g", "data-part", "axis");
    double y = top + line() * PlanePlot.HEAD;
    for (String words : upLines()) {
      text(svg, style.sheet().margin(), y, Svg.Anchor.START, words);
      y += line();
    }
    field.numbers(svg, field.bottom() + line() * 0.85);
    double heading = field.bottom() + line() * 1.5;
    for (String words : acrossLines()) {
      text(
          svg,
          style.sheet().margin() + style.sheet().room() / 2,
          heading,
          Svg.Anchor.MIDDLE,
          words);
      heading += line();
    }
    svg.close("g");
  }

  private void text(Svg svg, double x, double top, Svg.Anchor anchor, String words) {
    svg.text(x, top + line() / 2 + bold().middleToBaseline(), anchor, bold(), words);
  }
}
