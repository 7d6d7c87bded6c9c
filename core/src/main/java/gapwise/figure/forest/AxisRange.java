package gapwise.figure.forest;

import gapwise.figure.drawing.Ticks;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/**
 * Which stretch of numbers a figure's axis covers: every estimate, the no-effect line, thresholds,
 * pooled intervals and predictions, and the limits of the series. The widest tenth of those limits
 * (at least one of five) leaves with an arrow head if it would stretch the axis by more than two
 * fifths, so that one series of one patient does not flatten all others. Both shares are our
 * choice.
 */
final class AxisRange {
  private static final double MAY_LEAVE = 0.1;
  private static final int FEWEST_FOR_LEAVING = 5;
  private static final double WORTH_LEAVING = 1.4;

  /** Nothing stretches a log axis further than this factor beyond the estimates. */
  private static final double FARTHEST_FACTOR = 30;

  /** Nor a summary a linear axis further than this many times the spread of the series. */
  private static final double FARTHEST_SPREAD = 4;

  private final Quantity measure;
  private final List<Double> middles = new ArrayList<>();
  private final List<Double> lowers = new ArrayList<>();
  private final List<Double> uppers = new ArrayList<>();

  /** Works in coordinates in which the axis is even: logarithms for ratios. */
  private AxisRange(Forest forest) {
    this.measure = forest.measure();
    for (ForestRow row : forest.rows()) {
      middles.add(even(row.estimate().value()));
      lowers.add(even(row.estimate().lower()));
      uppers.add(even(row.estimate().upper()));
    }
    forest.pooled().forEach(pooled -> middles.add(even(pooled.estimate().value())));
    if (!middles.isEmpty()) {
      measure.noEffect().ifPresent(none -> middles.add(even(none)));
      forest.axis().thresholds().forEach(line -> middles.add(even(line.value())));
    }
  }

  /** Ticks and ends of the figure's axis. */
  static Ticks of(Forest forest, int mostTicks) {
    AxisRange range = new AxisRange(forest);
    return range.middles.isEmpty()
        ? range.emptyTicks(mostTicks)
        : range.ticks(forest.pooled(), mostTicks);
  }

  private double even(double value) {
    return measure.logarithmic() ? Math.log(value) : value;
  }

  private Ticks ticks(List<ForestSummary.Pooled> pooled, int mostTicks) {
    double least = Collections.min(middles);
    double most = Collections.max(middles);
    double usualLow = Math.min(least, usual(lowers, true, least));
    double usualHigh = Math.max(most, usual(uppers, false, most));
    double low = Math.min(least, lowers.stream().reduce(least, Math::min));
    double high = Math.max(most, uppers.stream().reduce(most, Math::max));
    double worth = (WORTH_LEAVING - 1) * (usualHigh - usualLow);
    low = usualLow - low > worth ? usualLow : low;
    high = high - usualHigh > worth ? usualHigh : high;
    double spread = Math.max(high - low, Math.max(Math.abs(low), Math.abs(high)) * 0.05);
    double farthest = measure.logarithmic() ? Math.log(FARTHEST_FACTOR) : FARTHEST_SPREAD * spread;
    double floor = measure.logarithmic() ? least - farthest : low - farthest;
    double ceiling = measure.logarithmic() ? most + farthest : high + farthest;
    for (ForestSummary.Pooled each : pooled) {
      List<Limits> wanted =
          Stream.concat(Stream.of(each.estimate().limits()), each.prediction().stream()).toList();
      for (Limits limits : wanted) {
        low = Math.min(low, even(limits.lower()));
        high = Math.max(high, even(limits.upper()));
      }
    }
    return rounded(Math.max(low, floor), Math.min(high, ceiling), mostTicks);
  }

  /** The limit beyond which only the limits that may leave lie. */
  private static double usual(List<Double> limits, boolean lowest, double otherwise) {
    if (limits.isEmpty()) {
      return otherwise;
    }
    List<Double> sorted = new ArrayList<>(limits);
    Collections.sort(sorted);
    int tenth = (int) Math.floor(MAY_LEAVE * sorted.size());
    int leaving = sorted.size() < FEWEST_FOR_LEAVING ? 0 : Math.max(1, tenth);
    return sorted.get(lowest ? leaving : sorted.size() - 1 - leaving);
  }

  private Ticks rounded(double low, double high, int most) {
    if (measure.logarithmic()) {
      return Ticks.logarithmic(Math.exp(low), Math.exp(high), most);
    }
    double factor = measure.axisFactor();
    if (measure.kind() == Quantity.Kind.OF_100 && high - low < 0.05) {
      return Ticks.linear(Math.max(0, low - 0.05) * 100, Math.min(1, high + 0.05) * 100, most);
    }
    return Ticks.linear(low * factor, high * factor, most);
  }

  private Ticks emptyTicks(int most) {
    return measure.logarithmic()
        ? Ticks.logarithmic(0.1, 10, most)
        : Ticks.linear(0, measure.kind() == Quantity.Kind.OF_100 ? 100 : 10, most);
  }
}
