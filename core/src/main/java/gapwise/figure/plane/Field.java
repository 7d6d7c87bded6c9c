package gapwise.figure.plane;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Style;
import gapwise.figure.drawing.Svg;
import gapwise.figure.drawing.TextMeasure;
import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Shown;
import java.math.BigDecimal;
import java.util.List;

/**
 * A field with a linear axis across and one up, and the numbers at both.
 *
 * @param style sizes
 * @param top upper edge
 * @param height from upper to lower edge
 * @param x axis across
 * @param y axis up
 */
record Field(Style style, double top, double height, Ticks x, Ticks y) {
  private static final double SIZES_PER_TICK = 6;

  /** How many numbers have room across. */
  static int mostAcross(Style style) {
    double room = style.sheet().room() / (SIZES_PER_TICK * style.type().small());
    return (int) Math.max(4, Math.min(10, room));
  }

  double left() {
    double widest =
        y.values().stream().mapToDouble(tick -> small().width(words(tick))).max().orElse(0);
    return style.sheet().margin() + widest + small().size() * 0.8;
  }

  double right() {
    double last = x.values().isEmpty() ? 0 : small().width(words(last())) / 2;
    return style.sheet().right() - last;
  }

  private BigDecimal last() {
    return x.values().get(x.values().size() - 1);
  }

  double bottom() {
    return top + height;
  }

  double x(double value) {
    return left() + (value - x.lower()) / (x.upper() - x.lower()) * (right() - left());
  }

  double y(double value) {
    return bottom() - (value - y.lower()) / (y.upper() - y.lower()) * height;
  }

  private Lettering small() {
    return style.small();
  }

  /** Edges with their ticks. */
  void edges(Svg svg) {
    StringBuilder path = new StringBuilder();
    for (BigDecimal tick : x.values()) {
      path.append('M').append(Svg.at(x(tick.doubleValue()), bottom()));
      path.append('V').append(Svg.n(bottom() + 4));
    }
    for (BigDecimal tick : y.values()) {
      path.append('M').append(Svg.at(left() - 4, y(tick.doubleValue())));
      path.append('H').append(Svg.n(left()));
    }
    path.append('M').append(Svg.at(left(), top));
    path.append('V').append(Svg.n(bottom())).append('H').append(Svg.n(right()));
    svg.stroke(path.toString(), Ink.SOFT, 1);
  }

  /** Numbers at both axes; those across whose middle is at {@code middle}. */
  void numbers(Svg svg, double middle) {
    double down = small().middleToBaseline();
    double free = Double.NEGATIVE_INFINITY;
    for (BigDecimal tick : x.values()) {
      double half = small().width(words(tick)) / 2;
      double at = x(tick.doubleValue());
      if (at - half > free) {
        svg.text(at, middle + down, Svg.Anchor.MIDDLE, small(), words(tick));
        free = at + half + small().size() * 0.4;
      }
    }
    for (BigDecimal tick : y.values()) {
      svg.text(left() - 7, y(tick.doubleValue()) + down, Svg.Anchor.END, small(), words(tick));
    }
  }

  private static String words(BigDecimal tick) {
    BigDecimal plain = tick.signum() == 0 ? BigDecimal.ZERO : tick.stripTrailingZeros();
    String digits = Shown.grouped(plain.abs().toPlainString());
    return plain.signum() < 0 ? "\u2212" + digits : digits;
  }

  /** Words above or below a field: lines from the left and from the right, each in its half. */
  List<String> half(String words) {
    return TextMeasure.wrap(words, small(), (right() - left()) / 2 - small().size() * 0.5);
  }
}
