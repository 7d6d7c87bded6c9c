package gapwise.cohort;

import gapwise.evidence.QuantitySummary;
import java.util.Locale;

/**
 * From the lowest to the highest value of a group, as far as a paper lets it be told.
 *
 * @param lowest lowest value
 * @param highest highest value
 * @param usualLow above this most of the group lies
 * @param usualHigh below this most of the group lies
 * @param printed whether both are printed, and not drawn from mean and standard deviation
 */
record Span(double lowest, double highest, double usualLow, double usualHigh, boolean printed) {
  /** The paper does not say. */
  static final Span UNKNOWN =
      new Span(
          Double.NEGATIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          Double.NEGATIVE_INFINITY,
          Double.POSITIVE_INFINITY,
          false);

  /**
   * So many standard deviations about a mean hold nearly all of a group, whatever the shape: 84 %
   * at least by Chebyshev's inequality, 99 % of a normal one.
   */
  private static final double DEVIATIONS = 2.5;

  /** So many hold most of a group: 56 % at least, 87 % of a normal one. */
  private static final double USUAL_DEVIATIONS = 1.5;

  /** Standard deviation of ages and lengths beside a mean without one, of the mean. Assumed. */
  private static final double DEVIATION_UNSTATED = 0.4;

  static Span of(QuantitySummary summary) {
    double lowest = summary.minimum().orElse(Double.NEGATIVE_INFINITY);
    double highest = summary.maximum().orElse(Double.POSITIVE_INFINITY);
    boolean printed = summary.minimum().isPresent() && summary.maximum().isPresent();
    if (summary.mean().isEmpty()) {
      return printed ? new Span(lowest, highest, lowest, highest, true) : UNKNOWN;
    }
    double mean = summary.mean().getAsDouble();
    boolean stated = summary.standardDeviation().isPresent();
    double deviation = summary.standardDeviation().orElse(DEVIATION_UNSTATED * mean);
    return new Span(
        stated ? summary.minimum().orElse(mean - DEVIATIONS * deviation) : lowest,
        stated ? summary.maximum().orElse(mean + DEVIATIONS * deviation) : highest,
        Math.max(lowest, mean - USUAL_DEVIATIONS * deviation),
        Math.min(highest, mean + USUAL_DEVIATIONS * deviation),
        printed);
  }

  /** Whether most of one group lies outside of most of the other. */
  boolean hardlyMeets(Span other) {
    return usualLow > other.usualHigh || other.usualLow > usualHigh;
  }

  boolean apartFrom(Span other) {
    return lowest > other.highest || other.lowest > highest;
  }

  @Override
  public String toString() {
    return printed
        ? String.format(Locale.ROOT, "%.1f to %.1f", lowest, highest)
        : String.format(Locale.ROOT, "most from about %.1f to %.1f", usualLow, usualHigh);
  }
}
