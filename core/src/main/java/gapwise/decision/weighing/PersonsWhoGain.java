package gapwise.decision.weighing;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How many persons gain at least what one person would notice (the minimal important difference),
 * when changes differ between persons. A mean below that hides those who gain, a mean above it
 * those who do not.
 *
 * @param smallestThatMatters the change that matters to one person
 * @param spread standard deviation of changes between persons, above 0
 */
public record PersonsWhoGain(double smallestThatMatters, double spread) {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public PersonsWhoGain {
    if (!(Double.isFinite(smallestThatMatters) && spread > 0 && Double.isFinite(spread))) {
      throw new IllegalArgumentException(
          "needs a change that matters and a spread above 0, were "
              + smallestThatMatters
              + " and "
              + spread);
    }
  }

  /** Their share, 0 to 1, where changes are normal about a mean: Phi((mean - MID)/SD). */
  public double share(double mean) {
    return NORMAL.cumulativeProbability((mean - smallestThatMatters) / spread);
  }

  /** How many more of all persons gain with one mean than with another, -1 to 1. */
  public double more(double mean, double otherMean) {
    return share(mean) - share(otherMean);
  }
}
