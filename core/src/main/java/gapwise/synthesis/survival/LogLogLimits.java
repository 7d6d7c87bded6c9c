package gapwise.synthesis.survival;

import gapwise.effect.Interval;
import java.util.Optional;

/** Limits of a share on the scale log(-log), so that they stay between 0 and 1. */
final class LogLogLimits {
  private LogLogLimits() {}

  /**
   * S^exp(+- multiplier se/|log S|).
   *
   * @param standardErrorOfLog of log S
   * @return empty where S is 0 or 1 or its standard error is not known
   */
  static Optional<Interval> of(double share, double standardErrorOfLog, double multiplier) {
    if (!(share > 0 && share < 1 && Double.isFinite(standardErrorOfLog))) {
      return Optional.empty();
    }
    double log = Math.log(share);
    double factor = Math.exp(multiplier * standardErrorOfLog / -log);
    double lower = Double.isInfinite(factor) ? 0 : Math.exp(log * factor);
    return Optional.of(new Interval(lower, Math.exp(log / factor)));
  }
}
