package gapwise.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The field of an outcome over the length of missing bone with its two axes.
 *
 * @param bubble the figure
 * @param style sizes
 * @param fieldHeight height of the field
 */
record BubblePlot(Bubble bubble, Style style, double fieldHeight) implements Part {
  private static final double SIZES_PER_TICK = 4;

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

  private boolean of100() {
    return bubble.measure().kind() == Measure.Kind.OF_100;
  }

  /** Ticks in what people read: of 100, or the unit. */
  private Ticks values() {
    Limits seen = bubble.values();
    double factor = bubble.measure().axisFactor();
    double lower = seen.lower() * factor;
    double upper = seen.upper() * factor;
    if (of100()) {
      return Ticks.linear(Math.max(0, lower), Math.min(100, upper), 8);
    }
    boolean positive = bubble.points().stream().allMatch(point -> point.value() >= 0);
    return Ticks.linear(positive ? Math.max(0, lower) : lower, upper, 8);
  }

  private Ticks lengths() {
    int most =
        (int) Math.max(4, Math.min(14, style.sheet().room() / (SIZES_PER_TICK * small().size())));
    Limits seen = bubble.lengths();
    return Ticks.linear(seen.lower(), seen.upper(), most);
  }

  @Override
  public double height() {
    return line() * (4.6 + headingLines().size()) + fieldHeight;
  }

  /** Where things lie. */
  private record Field(
      double left, double right, double top, double bottom, Ticks x, Ticks y, double factor) {
    double x(double centimetres) {
      return left + (centimetres - x.lower()) / (x.upper() - x.lower()) * (right - left);
    }

    /** Values that leave the field are held at its edge. */
    double y(double value) {
      double share = (value * factor - y.lower()) / (y.upper() - y.lower());
      return bottom - Math.max(0, Math.min(1, share)) * (bottom - top);
    }
  }

  @Override
  public void draw(Svg svg, double top) {
    double fieldTop = top + line() * (headingLines().size() + 1.5);
    Field field =
        new Field(
            left(),
            right(),
            fieldTop,
            fieldTop + fieldHeight,
            lengths(),
            values(),
            bubble.measure().axisFactor());
    svg.open("g", "data-part", "field");
    curve(svg, field);
    grid(svg, field);
    svg.close("g");
    points(svg, field);
    words(svg, field, top);
  }

  private void curve(Svg svg, Field field) {
    List<Bubble.At> told = bubble.curve().stream().filter(a -> a.prediction().isPresent()).toList();
    band(
        svg,
        field,
        told,
        at -> at.prediction().orElseThrow().lower(),
        at -> at.prediction().orElseThrow().upper(),
        "none",
        "2 3");
    band(
        svg,
        field,
        bubble.curve(),
        at -> at.interval().lower(),
        at -> at.interval().upper(),
        Ink.BONE,
        "");
    for (int i = 1; i < bubble.curve().size(); i++) {
      Bubble.At from = bubble.curve().get(i - 1);
      Bubble.At to = bubble.curve().get(i);
      if (!from.beyondData() && !to.beyondData()) {
        svg.line(
            field.x(from.lengthCentimetres()),
            field.y(from.value()),
            field.x(to.lengthCentimetres()),
            field.y(to.value()),
            Ink.ACCENT,
            2.2);
      }
    }
    beyond(svg, field);
  }

  /** The parts beyond the data: dashed, behind an upright line, and named. */
  private void beyond(Svg svg, Field field) {
    for (List<Bubble.At> part : beyondParts()) {
      StringBuilder path = new StringBuilder();
      for (Bubble.At at : part) {
        path.append(path.isEmpty() ? 'M' : 'L');
        path.append(Svg.at(field.x(at.lengthCentimetres()), field.y(at.value())));
      }
      svg.shape(path.toString(), "none", Ink.ACCENT, 1.8, "5 4");
    }
    List<Bubble.At> inside = bubble.curve().stream().filter(a -> !a.beyondData()).toList();
    if (inside.isEmpty() || !bubble.leavesData()) {
      return;
    }
    double first = inside.get(0).lengthCentimetres();
    double last = inside.get(inside.size() - 1).lengthCentimetres();
    if (bubble.curve().get(0).beyondData()) {
      wall(svg, field, field.x(first), true);
    }
    if (bubble.curve().get(bubble.curve().size() - 1).beyondData()) {
      wall(svg, field, field.x(last), false);
    }
  }

  private void wall(Svg svg, Field field, double x, boolean leftwards) {
    svg.dashed(x, field.top(), x, field.bottom(), Ink.SOFT, 1.1, "1.2 3");
    double room = leftwards ? x - field.left() : field.right() - x;
    String words = "beyond the data";
    double gap = small().size() * 0.4;
    if (small().width(words) + 2 * gap > room) {
      return;
    }
    double baseline = field.top() + line() * 0.6 + small().middleToBaseline();
    Svg.Anchor anchor = leftwards ? Svg.Anchor.END : Svg.Anchor.START;
    svg.text(leftwards ? x - gap : x + gap, baseline, anchor, small(), words);
  }

  private List<List<Bubble.At>> beyondParts() {
    List<List<Bubble.At>> parts = new ArrayList<>();
    List<Bubble.At> curve = bubble.curve();
    List<Bubble.At> part = new ArrayList<>();
    for (int i = 0; i < curve.size(); i++) {
      boolean touches =
          curve.get(i).beyondData()
              || (i > 0 && curve.get(i - 1).beyondData())
              || (i + 1 < curve.size() && curve.get(i + 1).beyondData());
      if (touches) {
        part.add(curve.get(i));
      } else if (!part.isEmpty()) {
        parts.add(part);
        part = new ArrayList<>();
      }
    }
    parts.add(part);
    return parts.stream().filter(each -> each.size() > 1).toList();
  }

  private static void band(
      Svg svg,
      Field field,
      List<Bubble.At> points,
      ToDoubleFunction<Bubble.At> lower,
      ToDoubleFunction<Bubble.At> upper,
      String fill,
      String dashes) {
    if (points.size() < 2) {
      return;
    }
    StringBuilder path = new StringBuilder();
    for (Bubble.At at : points) {
      path.append(path.isEmpty() ? 'M' : 'L');
      path.append(Svg.at(field.x(at.lengthCentimetres()), field.y(upper.applyAsDouble(at))));
    }
    for (int i = points.size() - 1; i >= 0; i--) {
      Bubble.At at = points.get(i);
      path.append('L');
      path.append(Svg.at(field.x(at.lengthCentimetres()), field.y(lower.applyAsDouble(at))));
    }
    svg.shape(path.append('Z').toString(), fill, Ink.BONE_EDGE, 0.9, dashes);
  }

  private static void grid(Svg svg, Field field) {
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

  private void points(Svg svg, Field field) {
    double most = bubble.points().stream().mapToDouble(this::weight).max().orElse(1);
    double largest = style.rhythm().lensRadius() * 1.25;
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

  private static void spread(Svg svg, Field field, Bubble.Point point) {
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
    return point.label()
        + ", "
        + point.kind().label()
        + ": "
        + table.value(point)
        + ", missing bone "
        + Shown.centimetres(point.lengthCentimetres())
        + " cm"
        + (spread.isEmpty() ? "" : ", " + spread);
  }

  private void words(Svg svg, Field field, double top) {
    svg.open("g", "data-part", "axis");
    double down = small().middleToBaseline();
    double y = top + line() * 0.9;
    for (String words : headingLines()) {
      svg.text(style.sheet().margin(), y + down, Svg.Anchor.START, bold(), words);
      y += line();
    }
    double middle = field.bottom() + line() * 0.85;
    for (java.math.BigDecimal tick : field.x().values()) {
      String words = plain(tick);
      svg.text(field.x(tick.doubleValue()), middle + down, Svg.Anchor.MIDDLE, small(), words);
    }
    for (java.math.BigDecimal tick : field.y().values()) {
      double at = field.y(tick.doubleValue() / field.factor());
      svg.text(field.left() - 7, at + down, Svg.Anchor.END, small(), plain(tick));
    }
    double centre = (field.left() + field.right()) / 2;
    String whole = "missing bone, cm (mean or median of the series)";
    boolean fits = bold().width(whole) <= field.right() - field.left();
    String words = fits ? whole : "missing bone, cm";
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
    StringBuilder words = new StringBuilder(bubble.axis().heading());
    if (!bubble.axis().higher().isBlank()) {
      words.append(" (\u2191\u00a0").append(bubble.axis().higher()).append(')');
    } else if (!bubble.axis().lower().isBlank()) {
      words.append(" (\u2193\u00a0").append(bubble.axis().lower()).append(')');
    }
    return TextMeasure.wrap(words.toString(), bold(), style.sheet().room());
  }
}
