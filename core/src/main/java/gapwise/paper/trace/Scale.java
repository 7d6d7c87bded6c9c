package gapwise.paper.trace;

/** How values lie along an axis. */
public enum Scale {
  /** Equal steps, equal distances. */
  LINEAR,
  /** Equal ratios, equal distances. */
  LOG,
  /** Equal steps, printed as percentages: 100 stands for a share of 1. */
  PERCENT;

  /**
   * The value at a place.
   *
   * @param fraction of the way from the first mark to the second; below 0 before the first
   */
  double value(double fraction, double first, double second) {
    return switch (this) {
      case LINEAR -> first + fraction * (second - first);
      case LOG -> first * Math.pow(second / first, fraction);
      case PERCENT -> (first + fraction * (second - first)) / 100;
    };
  }

  /** The fraction at a value. */
  double fraction(double value, double first, double second) {
    return switch (this) {
      case LINEAR -> (value - first) / (second - first);
      case LOG -> Math.log(value / first) / Math.log(second / first);
      case PERCENT -> (100 * value - first) / (second - first);
    };
  }
}
