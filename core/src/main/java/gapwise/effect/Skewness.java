package gapwise.effect;

/**
 * Whether a median with a range or quartiles looks too lopsided for values that are near normal:
 * Shi, Luo, Wan, Liu, Liu, Bian and Tong, Stat Methods Med Res 2023;32:1338 (arXiv 2010.05749). The
 * critical values hold the chance of a false alarm for normal values to 5 % or little more or less:
 * exact integration (core/src/test/reference/skewness_critical_values.py) gives 4.5 to 5.1 % for
 * range and quartiles, two million draws 3.5 to 4.7 % for both together; fitted anew, the first
 * constants are nearly the same. The last, 40, is not confirmed: fitted it is 59, which only
 * matters below some 20 patients, where 40 is the more cautious against false alarms.
 */
final class Skewness {
  /** Below this number of patients the critical values mean nothing. */
  private static final double FEWEST = 5;

  private Skewness() {}

  /** Whether it does; false if nothing can be told, as with very few patients. */
  static boolean looksSkewed(FiveNumbers x) {
    double n = x.n();
    if (n < FEWEST) {
      return false;
    }
    return switch (x.beside()) {
      case RANGE -> ofRange(x) > 1.01 / Math.log(n + 9) + 2.43 / (n + 1);
      case QUARTILES -> ofQuartiles(x) > 2.65 / Math.sqrt(n) - 6 / (n * n);
      case BOTH ->
          Math.max(2.65 * Math.log(0.6 * n) / Math.sqrt(n) * ofRange(x), ofQuartiles(x))
              > 3 / Math.sqrt(n) - 40 / (n * n * n);
    };
  }

  private static double ofRange(FiveNumbers x) {
    return lopsided(x.min(), x.median(), x.max());
  }

  private static double ofQuartiles(FiveNumbers x) {
    return lopsided(x.q1(), x.median(), x.q3());
  }

  /** How far the middle of the limits lies from the median, over half their distance. */
  private static double lopsided(double lower, double median, double upper) {
    double width = upper - lower;
    return width > 0 ? Math.abs((upper - median) - (median - lower)) / width : 0;
  }
}
