package gapwise.figure.drawing;

import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A horizontal axis: where a value of the measure lies across the drawing.
 *
 * @param measure what the numbers are
 * @param ticks ends and round numbers, as they stand on the axis (of 100, not of 1)
 * @param left x of the lower end
 * @param right x of the upper end
 */
public record Axis(Quantity measure, Ticks ticks, double left, double right) {
  /** A position, and whether the value lies beyond the end at which it is drawn. */
  record Place(double x, boolean beyond) {}

  /** Where the value lies; values beyond an end are placed on it. */
  Place place(double value) {
    double share = share(value * measure.axisFactor());
    double within = Math.max(0, Math.min(1, share));
    // Half a thousandth of the axis is less than a line is wide: no arrow for that.
    boolean beyond = share < -0.0005 || share > 1.0005;
    return new Place(left + within * (right - left), beyond);
  }

  public double x(double value) {
    return place(value).x();
  }

  public boolean covers(double value) {
    return !place(value).beyond();
  }

  /** Positions of the ticks, in order. */
  public double[] tickPositions() {
    return ticks.values().stream()
        .mapToDouble(tick -> left + share(tick.doubleValue()) * (right - left))
        .toArray();
  }

  /** Words of the ticks, in order. */
  public List<String> tickWords() {
    boolean signed = measure.noEffect().isPresent() && !measure.logarithmic();
    return IntStream.range(0, ticks.values().size())
        .mapToObj(i -> words(ticks.values().get(i), signed))
        .toList();
  }

  private static String words(BigDecimal tick, boolean signed) {
    BigDecimal shown = tick.signum() == 0 ? BigDecimal.ZERO : strip(tick);
    String digits = Shown.grouped(shown.abs().toPlainString());
    if (tick.signum() < 0) {
      return "\u2212" + digits;
    }
    return signed && tick.signum() > 0 ? "+" + digits : digits;
  }

  private static BigDecimal strip(BigDecimal tick) {
    return tick.stripTrailingZeros();
  }

  private double share(double axisValue) {
    if (!measure.logarithmic()) {
      return (axisValue - ticks.lower()) / (ticks.upper() - ticks.lower());
    }
    if (axisValue <= 0) {
      return Double.NEGATIVE_INFINITY;
    }
    return Math.log(axisValue / ticks.lower()) / Math.log(ticks.upper() / ticks.lower());
  }
}
