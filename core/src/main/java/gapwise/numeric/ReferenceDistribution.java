package gapwise.numeric;

import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The symmetric distribution that an estimate over its standard error is set against: standard
 * normal, or Student's t.
 */
public final class ReferenceDistribution {
  private static final ReferenceDistribution NORMAL =
      new ReferenceDistribution(NormalDistribution.of(0, 1), OptionalInt.empty());

  private final ContinuousDistribution distribution;
  private final OptionalInt degreesOfFreedom;

  private ReferenceDistribution(ContinuousDistribution distribution, OptionalInt degrees) {
    this.distribution = distribution;
    this.degreesOfFreedom = degrees;
  }

  /** The standard normal distribution. */
  public static ReferenceDistribution normal() {
    return NORMAL;
  }

  /**
   * Student's t.
   *
   * @param degreesOfFreedom at least 1
   */
  public static ReferenceDistribution studentT(int degreesOfFreedom) {
    return new ReferenceDistribution(
        TDistribution.of(degreesOfFreedom), OptionalInt.of(degreesOfFreedom));
  }

  /** Empty for the normal distribution. */
  public OptionalInt degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /**
   * The distance from the middle that holds a share of the distribution, half on each side.
   *
   * @param level above 0 and below 1, such as 0.95
   */
  public double multiplier(double level) {
    return distribution.inverseSurvivalProbability((1 - level) / 2);
  }

  /** The probability of a value below the one given, 0.5 in the middle. */
  public double below(double value) {
    return distribution.cumulativeProbability(value);
  }

  /** The probability of a value at least so far from the middle, either side. */
  public double twoSidedP(double statistic) {
    return Math.min(1, 2 * distribution.survivalProbability(Math.abs(statistic)));
  }
}
