package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.AxisWords;
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
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * The field of an outcome over the length of missing bone with its two axes.
 *
 * @param bubble the figure
 * @param style sizes
 * @param fieldHeight height of the field
 */
record BubblePlot(Bubble bubble, Style style, double fieldHeight) implements PagePart {
  private static final double SIZES_PER_TICK = 4;

  /** The shortest stretch of an axis of shares, of 100; our choice. */
  private static final double LEAST_OF_100 = 20;

  /** The shortest stretch of another axis as a share of its largest value; our choice. */
  private static final double LEAST_SHARE = 0.2;

  /** Marks of few patients stay large enough for their shape to be told. */
  private static final double LEAST_RADIUS = 4.2;

  private Lettering small() {
    return style.small();
  }

  private double line() {
    return style.type().small() * 1.45;
  }

  private double left() {
    double widest =
        values().values().stream()
            .mapToDouble(tick -> small().width(tick.toPlainString()))
            .max()
            .orElse(0);
    return style.sheet().margin() + widest + small().size();
  }

  private double right() {
    return style.sheet().right() - small().size() * 0.5;
  }

  /**
   * Ticks in what people read: of 100, or the unit; over a stretch on which little looks little.
   */
  private Ticks values() {
    Limits seen = bubble.values();
    double factor = bubble.measure().axisFactor();
    double lower = seen.lower() * factor;
    double upper = seen.upper() * factor;
    if (bubble.isOf100()) {
      double wider = Math.max(0, LEAST_OF_100 - (upper - lower)) / 2;
      double top = Math.min(100, Math.max(upper + wider, LEAST_OF_100));
      double bottom = Math.max(0, Math.min(lower - wider, top - LEAST_OF_100));
      return Ticks.linear(bottom, top, 8);
    }
    double least = LEAST_SHARE * Math.max(Math.abs(lower), Math.abs(upper));
    double wider = Math.max(0, least - (upper - lower)) / 2;
    boolean positive = bubble.points().stream().allMatch(point -> point.value() >= 0);
    return Ticks.linear(positive ? Math.max(0, lower - wider) : lower - wider, upper + wider, 8);
  }

  private Ticks lengths() {
    int most =
        (int) Math.max(4, Math.min(14, style.sheet().room() / (SIZES_PER_TICK * small().size())));
    Limits seen = bubble.lengths();
    return Ticks.linear(seen.lower(), seen.upper(), most);
  }

  /** Heading, then room for marks on the upper edge and for words over it. */
  private double aboveField() {
    double heading = line() * (headingLines().size() + 0.5);
    double words = bubble.leavesData() ? BubbleWalls.height(style) : 0;
    return heading + Math.max(line(), words + greatestRadius(style));
  }

  /** From the lower edge to the numbers under it, clear of marks on that edge. */
  private double toNumbers() {
    return Math.max(line() * 0.85, greatestRadius(style) + small().size() * 0.5);
  }

  /** Of the mark of greatest weight. */
  static double greatestRadius(Style style) {
    return style.rhythm().lensRadius() * 1.25;
  }

  @Override
  public double height() {
    return aboveField() + fieldHeight + line() * 2.25 + toNumbers();
  }

  @Override
  public void draw(Svg svg, double top) {
    double fieldTop = top + aboveField();
    BubbleField field =
        new BubbleField(
            left(),
            right(),
            fieldTop,
            fieldTop + fieldHeight,
            lengths(),
            values(),
            bubble.measure().axisFactor());
    svg.open("g", "data-part", "field");
    new BubbleCurve(bubble, style, field).draw(svg);
    grid(svg, field);
    svg.close("g");
    new BubblePatients(bubble, field).draw(svg);
    points(svg, field);
    words(svg, field, top);
  }

  private static void grid(Svg svg, BubbleField field) {
    StringBuilder path = new StringBuilder();
    for (Number tick : field.x().values()) {
      path.append('M').append(Svg.at(field.x(tick.doubleValue()), field.bottom()));
      path.append('V').append(Svg.n(field.bottom() + 4));
    }
    for (Number tick : field.y().values()) {
      double y = field.y(tick.doubleValue() / field.factor());
      path.append('M').append(Svg.at(field.left() - 4, y)).append('H').append(Svg.n(field.left()));
    }
    path.append('M').append(Svg.at(field.left(), field.top()));
    path.append('V').append(Svg.n(field.bottom())).append('H').append(Svg.n(field.right()));
    svg.stroke(path.toString(), Ink.SOFT, 1);
  }

  private double weight(Bubble.Point point) {
    return point.weightPercent().orElse(point.patients().orElse(0));
  }

  private void points(Svg svg, BubbleField field) {
    double most = bubble.points().stream().mapToDouble(this::weight).max().orElse(1);
    double largest = greatestRadius(style);
    List<Bubble.Point> largestFirst =
        bubble.points().stream()
            .sorted(Comparator.comparingDouble(this::weight).reversed())
            .toList();
    for (Bubble.Point point : largestFirst) {
      spread(svg, field, point);
    }
    for (Bubble.Point point : largestFirst) {
      double share = most > 0 ? weight(point) / most : 0;
      double radius = Math.max(LEAST_RADIUS, largest * Math.sqrt(share));
      svg.open("g", "data-part", "series");
      svg.element("title", title(point));
      double x = field.x(point.lengthCentimetres());
      MethodShape.draw(svg, point.kind(), x, field.y(point.value()), radius);
      svg.close("g");
    }
  }

  private static void spread(Svg svg, BubbleField field, Bubble.Point point) {
    if (point.spread().isEmpty()) {
      return;
    }
    double y = field.y(point.value());
    double from = field.x(point.spread().get().lower());
    double to = field.x(point.spread().get().upper());
    svg.stroke(
        "M"
            + Svg.at(from, y - 3)
            + "V"
            + Svg.n(y + 3)
            + "M"
            + Svg.at(from, y)
            + "H"
            + Svg.n(to)
            + "M"
            + Svg.at(to, y - 3)
            + "V"
            + Svg.n(y + 3),
        Ink.BONE_GREY,
        1.1);
  }

  private String title(Bubble.Point point) {
    BubbleTable table = new BubbleTable(bubble);
    String spread = table.spread(point);
    String series = point.label();
    String method = point.kind().label();
    String value = table.value(point);
    String length = Shown.centimetres(point.lengthCentimetres());
    return spread.isEmpty()
        ? say(
            "figure.one-bubble",
            Map.of("series", series, "method", method, "value", value, "length", length))
        : say(
            "figure.one-bubble-and-spread",
            Map.of(
                "series", series, "method", method, "value", value, "length", length, "spread",
                spread));
  }

  private void words(Svg svg, BubbleField field, double top) {
    svg.open("g", "data-part", "axis");
    double down = small().middleToBaseline();
    double y = top + line() * 0.9;
    for (String words : headingLines()) {
      svg.text(style.sheet().margin(), y + down, Svg.Anchor.START, bold(), words);
      y += line();
    }
    double middle = field.bottom() + toNumbers();
    for (java.math.BigDecimal tick : field.x().values()) {
      String words = plain(tick);
      svg.text(field.x(tick.doubleValue()), middle + down, Svg.Anchor.MIDDLE, small(), words);
    }
    for (java.math.BigDecimal tick : field.y().values()) {
      double at = field.y(tick.doubleValue() / field.factor());
      svg.text(field.left() - 7, at + down, Svg.Anchor.END, small(), plain(tick));
    }
    double centre = (field.left() + field.right()) / 2;
    String whole = say("figure.axis-of-bone");
    boolean fits = bold().width(whole) <= field.right() - field.left();
    String words = fits ? whole : say("figure.axis-of-bone-in-short");
    svg.text(centre, middle + line() * 1.1 + down, Svg.Anchor.MIDDLE, bold(), words);
    svg.close("g");
  }

  private static String plain(java.math.BigDecimal tick) {
    return tick.signum() == 0 ? "0" : tick.stripTrailingZeros().toPlainString();
  }

  private Lettering bold() {
    return Lettering.bold(style.type().small());
  }

  private List<String> headingLines() {
    AxisWords axis = bubble.axis();
    String words = axis.heading();
    if (!axis.higher().isBlank()) {
      words = say("figure.upwards", Map.of("axis", axis.heading(), "way", axis.higher()));
    } else if (!axis.lower().isBlank()) {
      words = say("figure.downwards", Map.of("axis", axis.heading(), "way", axis.lower()));
    }
    return TextMeasure.wrap(words, bold(), style.sheet().room());
  }
}
