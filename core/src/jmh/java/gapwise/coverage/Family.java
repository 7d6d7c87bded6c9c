package gapwise.coverage;

import java.util.List;
import java.util.Locale;

/**
 * What is simulated together and stands in one set of tables.
 *
 * @param name in the command and in the file of its scenarios
 * @param times how many replicates are drawn for each one asked for: more where they cost little
 * @param size how wide an interval is
 * @param targets what intervals are to hold
 */
record Family<D extends Drawn>(
    String name,
    int times,
    Size size,
    List<Target> targets,
    List<Way<D>> ways,
    List<Scenario<D>> scenarios) {

  /** Each of them, in the order of the page. */
  static List<Family<?>> all() {
    return List.of(
        Shares.family(),
        Rates.family(),
        BetaBinomialShares.ofTheirOwn(),
        BetaBinomialShares.ofNormalLogits(),
        OddsRatios.family(),
        RateRatios.family(),
        LogMeans.family(),
        RawMeans.family(),
        FurtherShares.family(),
        FurtherStudies.ofEffects(),
        FurtherStudies.ofNetworks(),
        FurtherStudies.ofTeams());
  }

  /** What the width of an interval is, and how a mean of widths is told. */
  enum Size {
    /** Limits are shares, widths percentage points. */
    POINTS("Mean width in percentage points", "points", 1),
    /** Limits are logarithms; told is by how much the upper limit is a multiple of the lower. */
    FACTOR("the upper limit as a multiple of the lower, geometric mean.", "log", 2),
    /** Limits are in standard deviations of patients. */
    DEVIATIONS("mean width in standard deviations of patients.", "deviations", 2);

    private static final double FAR = 10_000;

    private final String words;
    private final String column;
    private final int digits;

    Size(String words, String column, int digits) {
      this.words = words;
      this.column = column;
      this.digits = digits;
    }

    String words() {
      return words;
    }

    /** How the file of scenarios calls it. */
    String column() {
      return column;
    }

    double of(double lower, double upper) {
      return this == POINTS ? 100 * (upper - lower) : upper - lower;
    }

    /** A mean of widths in the file of scenarios. */
    String written(double mean) {
      return String.format(Locale.ROOT, "%." + (digits + 1) + "f", mean);
    }

    /** A mean of widths in the tables, in powers of ten where it says nothing any more. */
    String told(double mean) {
      double value = this == FACTOR ? Math.exp(mean) : mean;
      return String.format(Locale.ROOT, value < FAR ? "%." + digits + "f" : "%.0e", value);
    }
  }
}
