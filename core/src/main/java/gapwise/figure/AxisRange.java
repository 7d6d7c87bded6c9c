package gapwise.figure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/**
 * Which stretch of numbers a figure's axis covers. Every estimate, every pooled interval and the
 * no-effect line are covered, and nine in ten of the other limits; the rest leave with an arrow
 * head, so that one series of one patient does not flatten all others. Nine in ten is our choice.
 */
final class AxisRange {
  private static final double LEFT_TO_LEAVE = 0.1;

  /** No interval may stretch a log axis further than this factor beyond the estimates. */
  private static final double FARTHEST_FACTOR = 30;

  /** Nor a linear axis further than this many times the spread of estimates and usual limits. */
  private static final double FARTHEST_SPREAD = 4;

  private AxisRange() {}

  static Ticks of(Forest forest, int mostTicks) {
    Measure measure = forest.measure();
    List<Double> middles = middles(forest);
    List<Double> lowers = new ArrayList<>();
    List<Double> uppers = new ArrayList<>();
    forest.rows().forEach(row -> add(row.estimate().limits(), lowers, uppers));
    if (middles.isEmpty()) {
      return empty(measure, mostTicks);
    }
    double low = Math.min(Collections.min(middles), usual(lowers, true, middles));
    double high = Math.max(Collections.max(middles), usual(uppers, false, middles));
    if (measure.logarithmic()) {
      low = Math.max(low, Collections.min(middles) / FARTHEST_FACTOR);
      high = Math.min(high, Collections.max(middles) * FARTHEST_FACTOR);
    }
    double farthestLow = farthest(measure, low, high, false);
    double farthestHigh = farthest(measure, low, high, true);
    for (Summary.Pooled pooled : forest.pooled()) {
      List<Limits> wanted =
          Stream.concat(Stream.of(pooled.estimate().limits()), pooled.prediction().stream())
              .toList();
      for (Limits limits : wanted) {
        low = Math.min(low, Math.max(farthestLow, limits.lower()));
        high = Math.max(high, Math.min(farthestHigh, limits.upper()));
      }
    }
    return ticks(measure, low, high, mostTicks);
  }

  private static List<Double> middles(Forest forest) {
    List<Double> middles = new ArrayList<>();
    forest.rows().forEach(row -> middles.add(row.estimate().value()));
    forest.pooled().forEach(pooled -> middles.add(pooled.estimate().value()));
    if (!middles.isEmpty()) {
      forest.measure().noEffect().ifPresent(middles::add);
      forest.axis().thresholds().forEach(line -> middles.add(line.value()));
    }
    return middles;
  }

  private static void add(Limits limits, List<Double> lowers, List<Double> uppers) {
    lowers.add(limits.lower());
    uppers.add(limits.upper());
  }

  /** The limit that all but a tenth of the limits reach no further than. */
  private static double usual(List<Double> limits, boolean lowest, List<Double> middles) {
    if (limits.isEmpty()) {
      return middles.get(0);
    }
    List<Double> sorted = new ArrayList<>(limits);
    Collections.sort(sorted);
    int left = (int) Math.floor(LEFT_TO_LEAVE * sorted.size());
    return sorted.get(lowest ? left : sorted.size() - 1 - left);
  }

  private static double farthest(Measure measure, double low, double high, boolean up) {
    if (measure.logarithmic()) {
      return up ? high * FARTHEST_FACTOR : Math.max(low, Double.MIN_NORMAL) / FARTHEST_FACTOR;
    }
    double spread = Math.max(high - low, Math.max(Math.abs(high), Math.abs(low)) * 0.05);
    return up ? high + FARTHEST_SPREAD * spread : low - FARTHEST_SPREAD * spread;
  }

  private static Ticks ticks(Measure measure, double low, double high, int most) {
    if (measure.logarithmic()) {
      double smallest = Math.min(1, high) / 1e4;
      return Ticks.logarithmic(Math.max(low, smallest), high, most);
    }
    double factor = measure.axisFactor();
    double lower = low * factor;
    double upper = high * factor;
    if (measure.kind() == Measure.Kind.OF_100 && upper - lower < 5) {
      lower = Math.max(0, lower - 5);
      upper = Math.min(100, upper + 5);
    }
    return Ticks.linear(lower, upper, most);
  }

  private static Ticks empty(Measure measure, int most) {
    return measure.logarithmic()
        ? Ticks.logarithmic(0.1, 10, most)
        : Ticks.linear(0, measure.kind() == Measure.Kind.OF_100 ? 100 : 10, most);
  }
}
