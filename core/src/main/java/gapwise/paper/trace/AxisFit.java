package gapwise.paper.trace;

import gapwise.paper.trace.Ticks.Tick;
import java.util.List;

/**
 * How numbers along an axis lie: the better of equal steps and equal ratios.
 *
 * @param scale linear or logarithmic
 * @param worst how far a number is from where it should stand, points
 */
record AxisFit(Scale scale, double worst) {
  static AxisFit of(List<Tick> ticks) {
    double linear = worst(ticks, Scale.LINEAR);
    boolean positive = ticks.stream().allMatch(t -> t.value() > 0);
    double log = positive ? worst(ticks, Scale.LOG) : Double.MAX_VALUE;
    return log < linear ? new AxisFit(Scale.LOG, log) : new AxisFit(Scale.LINEAR, linear);
  }

  private static double worst(List<Tick> ticks, Scale scale) {
    Tick first = ticks.get(0);
    Tick last = ticks.get(ticks.size() - 1);
    double worst = 0;
    for (Tick tick : ticks) {
      double fraction = scale.fraction(tick.value(), first.value(), last.value());
      worst =
          Math.max(worst, Math.abs(first.at() + fraction * (last.at() - first.at()) - tick.at()));
    }
    return Double.isFinite(worst) ? worst : Double.MAX_VALUE;
  }
}
