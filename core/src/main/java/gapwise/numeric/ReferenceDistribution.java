package gapwise.numeric;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The symmetric distribution that an estimate over its standard error is set against: standard
 * normal, or Student's t.
 *
 * <p>A point of Student's t takes some ten microseconds, as long as all else of pooling a hundred
 * studies, and one pooling asks for the same point several times, thousands of poolings of as many
 * studies for the same again. So the distributions of few degrees of freedom are made once, and
 * each keeps the last point it was asked for.
 */
public final class ReferenceDistribution {
  private static final ReferenceDistribution NORMAL =
      new ReferenceDistribution(NormalDistribution.of(0, 1), OptionalDouble.empty());

  /** Whole degrees of freedom up to which distributions are kept: some tens of kilobytes in all. */
  private static final int MOST_KEPT = 1000;

  private static final Map<Double, ReferenceDistribution> KEPT = new ConcurrentHashMap<>();

  private final ContinuousDistribution distribution;
  private final OptionalDouble degreesOfFreedom;

  /**
   * Never half written, as a record is not: whoever sees an older one works the point out again.
   */
  private volatile Point last = new Point(0, 0);

  /** A level and its multiplier. */
  private record Point(double level, double multiplier) {}

  private ReferenceDistribution(ContinuousDistribution distribution, OptionalDouble degrees) {
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
   * @param degreesOfFreedom above 0, whole or not
   */
  public static ReferenceDistribution studentT(double degreesOfFreedom) {
    boolean few = degreesOfFreedom <= MOST_KEPT && degreesOfFreedom == Math.rint(degreesOfFreedom);
    return few
        ? KEPT.computeIfAbsent(degreesOfFreedom, ReferenceDistribution::ofDegrees)
        : ofDegrees(degreesOfFreedom);
  }

  private static ReferenceDistribution ofDegrees(double degreesOfFreedom) {
    return new ReferenceDistribution(
        TDistribution.of(degreesOfFreedom), OptionalDouble.of(degreesOfFreedom));
  }

  /** Of Student's t with a whole number of them; empty for every other distribution. */
  public OptionalInt wholeDegreesOfFreedom() {
    double degrees = degreesOfFreedom.orElse(0);
    return degrees >= 1 && degrees == Math.rint(degrees)
        ? OptionalInt.of((int) degrees)
        : OptionalInt.empty();
  }

  /**
   * The distance from the middle that holds a share of the distribution, half on each side.
   *
   * @param level above 0 and below 1, such as 0.95
   */
  public double multiplier(double level) {
    Point known = last;
    if (known.level() == level) {
      return known.multiplier();
    }
    double multiplier = distribution.inverseSurvivalProbability((1 - level) / 2);
    last = new Point(level, multiplier);
    return multiplier;
  }

  /**
   * The distance from the middle that a two-sided p value belongs to.
   *
   * @param pValue above 0, up to 1
   */
  public double distance(double pValue) {
    return pValue == 1 ? 0 : distribution.inverseSurvivalProbability(pValue / 2);
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
