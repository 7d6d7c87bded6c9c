package gapwise.synthesis.network;

import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * A statistic that is chi-squared where nothing but chance is at work.
 *
 * @param q at least 0
 * @param degreesOfFreedom at least 0
 */
public record ChiSquaredTest(double q, int degreesOfFreedom) {
  /** Empty without degrees of freedom. */
  public OptionalDouble pValue() {
    return degreesOfFreedom < 1
        ? OptionalDouble.empty()
        : OptionalDouble.of(ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(q));
  }

  /** Two independent tests together. */
  ChiSquaredTest plus(ChiSquaredTest other) {
    return new ChiSquaredTest(q + other.q, degreesOfFreedom + other.degreesOfFreedom);
  }
}
