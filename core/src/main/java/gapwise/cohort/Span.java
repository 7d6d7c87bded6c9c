package gapwise.cohort;

import gapwise.evidence.QuantitySummary;
import java.util.Locale;

/**
 * From the lowest to the highest value of a group, as far as a paper lets it be told.
 *
 * @param lowest lowest value
 * @param highest highest value
 * @param printed whether both are printed, and not drawn from mean and standard deviation
 */
record Span(double lowest, double highest, boolean printed) {
  /** The paper does not say. */
  static final Span UNKNOWN =
      new Span(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, false);

  /**
   * So many standard deviations about a mean hold nearly all of a group, whatever the shape: 84 %
   * at least by Chebyshev's inequality, 99 % of a normal one.
   */
  private static final double DEVIATIONS = 2.5;

  static Span of(QuantitySummary summary) {
    if (summary.minimum().isPresent() && summary.maximum().isPresent()) {
      return new Span(summary.minimum().getAsDouble(), summary.maximum().getAsDouble(), true);
    }
    if (summary.mean().isPresent() && summary.standardDeviation().isPresent()) {
      double reach = DEVIATIONS * summary.standardDeviation().getAsDouble();
      return new Span(
          summary.minimum().orElse(summary.mean().getAsDouble() - reach),
          summary.maximum().orElse(summary.mean().getAsDouble() + reach),
          false);
    }
    return UNKNOWN;
  }

  boolean apartFrom(Span other) {
    return lowest > other.highest || other.lowest > highest;
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%s%.1f to %.1f", printed ? "" : "about ", lowest, highest);
  }
}
