package gapwise.effect;

import gapwise.numeric.ReferenceDistribution;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The standard deviation of patients from what papers print beside a mean instead. From its
 * standard error or its 95 % interval: Cochrane Handbook for Systematic Reviews of Interventions,
 * section 6.5.2; both follow from the standard error of a mean being the deviation over the root of
 * n. From the range or the quartiles of the patients: Wan, Wang, Liu and Tong, BMC Med Res Methodol
 * 2014;14:135, equations 9 and 16 (by the formulas with normal quantiles, not the table), made for
 * values near normal. From a test of two means, or of an effect: Cochrane Handbook, section
 * 6.5.2.3, and 6.3.1 and 6.3.2 (these two from memory).
 */
public final class SpreadConversion {
  private static final int FEWEST_FOR_RANGE = 5;
  private static final int FEWEST_FOR_QUARTILES = 10;

  /** What test of its own difference or effect a row's spread is worked out from. */
  public enum FromTest {
    /** None: spread is reported, or nothing is. */
    NONE,
    /** The t statistic of a difference of two means. */
    T_STATISTIC,
    /** The p value of a difference of two means, by Student's t. */
    P_VALUE,
    /** The p value of an effect, by the normal distribution. */
    P_VALUE_OF_EFFECT,
    /**
     * A test from which no spread follows: a difference or statistic of 0, a p value of 1, or a
     * bound of one.
     */
    SILENT
  }

  private SpreadConversion() {}

  /**
   * The standard deviation that two groups share: the standard error of the difference of their
   * means, |difference/t|, over root(1/n1 + 1/n2). Empty where difference or t is 0, or beyond what
   * a double holds.
   *
   * @param difference of the means
   * @param t its statistic, in either direction
   * @param first patients of one group, at least 1
   * @param second patients of the other, at least 1
   */
  public static OptionalDouble fromTStatistic(
      double difference, double t, double first, double second) {
    if (!(first >= 1 && second >= 1)) {
      throw new IllegalArgumentException(
          "at least 1 patient a group, were " + first + " and " + second);
    }
    double deviation = Math.abs(difference / t) / Math.sqrt(1 / first + 1 / second);
    return deviation > 0 && Double.isFinite(deviation)
        ? OptionalDouble.of(deviation)
        : OptionalDouble.empty();
  }

  /**
   * The same from the two-sided p value of a t test on n1 + n2 - 2 degrees of freedom. Empty also
   * without degrees of freedom.
   *
   * @param pValue above 0, up to 1
   */
  public static OptionalDouble fromPValue(
      double difference, double pValue, double first, double second) {
    requireP(pValue);
    double degrees = first + second - 2;
    return degrees < 1
        ? OptionalDouble.empty()
        : fromTStatistic(
            difference, ReferenceDistribution.studentT(degrees).distance(pValue), first, second);
  }

  /**
   * The standard error of an effect on the analysis scale from its two-sided p value by the normal
   * distribution: |effect|/z. Empty where the effect is 0 or the p value 1.
   *
   * @param pValue above 0, up to 1
   */
  public static OptionalDouble errorFromPValue(double effect, double pValue) {
    requireP(pValue);
    double error = Math.abs(effect / ReferenceDistribution.normal().distance(pValue));
    return error > 0 && Double.isFinite(error) ? OptionalDouble.of(error) : OptionalDouble.empty();
  }

  private static void requireP(double pValue) {
    if (!(pValue > 0 && pValue <= 1)) {
      throw new IllegalArgumentException("a p value above 0 and up to 1, was " + pValue);
    }
  }

  /**
   * SE times the root of n.
   *
   * @param standardError of the mean, 0 or more
   * @param n patients, at least 1
   */
  public static double fromStandardError(double standardError, int n) {
    if (!(standardError >= 0) || n < 1) {
      throw new IllegalArgumentException(
          "a standard error of 0 or more and at least 1 patient, were "
              + standardError
              + " and "
              + n);
    }
    return standardError * Math.sqrt(n);
  }

  /**
   * The width of the interval over twice the point of Student's t on n-1, times the root of n.
   * Empty for one patient, who has no interval.
   *
   * @param lower lower 95 % limit of the mean
   * @param upper upper 95 % limit, not below the lower
   * @param n patients, at least 1
   */
  public static OptionalDouble fromLimits(double lower, double upper, int n) {
    requireOrder("limits", lower, upper, n);
    if (n == 1) {
      return OptionalDouble.empty();
    }
    double point = ReferenceDistribution.studentT(n - 1).multiplier(0.95);
    return OptionalDouble.of(fromStandardError((upper - lower) / (2 * point), n));
  }

  /**
   * The range over twice the expected standard normal place of the largest of n values. Empty for
   * one patient.
   *
   * @param minimum smallest value
   * @param maximum largest value, not below the smallest
   * @param n patients, at least 1
   */
  public static OptionalDouble fromRange(double minimum, double maximum, int n) {
    requireOrder("range", minimum, maximum, n);
    return n == 1 ? OptionalDouble.empty() : OptionalDouble.of(range(minimum, maximum, n));
  }

  /**
   * The distance of the quartiles over twice the expected standard normal place of the upper one.
   * Empty for one patient.
   *
   * @param lower first quartile
   * @param upper third quartile, not below the first
   * @param n patients, at least 1
   */
  public static OptionalDouble fromQuartiles(double lower, double upper, int n) {
    requireOrder("quartiles", lower, upper, n);
    return n == 1 ? OptionalDouble.empty() : OptionalDouble.of(quartiles(lower, upper, n));
  }

  /**
   * Whether a mean lies too far from the middle of its range for values near normal, so that {@link
   * #fromRange} misleads: |a + b - 2m|/(b - a) above 1.02/log(n + 9). The bound is ours: drawn
   * normal values pass it in 5 % of samples at 5 to 200 patients
   * (core/src/test/reference/spread_conversions.py); the test of Shi and colleagues (2023), made
   * for a median, hardly ever stops a mean. False with fewer than five patients.
   */
  public static boolean rangeLooksSkewed(double minimum, double mean, double maximum, int n) {
    return n >= FEWEST_FOR_RANGE && lopsided(minimum, mean, maximum) > 1.02 / Math.log(n + 9.0);
  }

  /**
   * The same of a mean and its quartiles: above 1.43/root n + 60/n^3, by the same drawing, from ten
   * patients on; with fewer it hangs on how a paper takes quartiles.
   */
  public static boolean quartilesLookSkewed(double lower, double mean, double upper, int n) {
    double cube = Math.pow(n, 3);
    return n >= FEWEST_FOR_QUARTILES
        && lopsided(lower, mean, upper) > 1.43 / Math.sqrt(n) + 60 / cube;
  }

  private static double lopsided(double lower, double mean, double upper) {
    return upper > lower ? Math.abs((upper - mean) - (mean - lower)) / (upper - lower) : 0;
  }

  /** As {@link #fromRange} for 2 patients or more. */
  static double range(double minimum, double maximum, double n) {
    return (maximum - minimum) / (2 * quantile((n - 0.375) / (n + 0.25)));
  }

  /** As {@link #fromQuartiles} for 2 patients or more. */
  static double quartiles(double lower, double upper, double n) {
    return (upper - lower) / (2 * quantile((0.75 * n - 0.125) / (n + 0.25)));
  }

  private static double quantile(double probability) {
    return NormalDistribution.of(0, 1).inverseCumulativeProbability(probability);
  }

  private static void requireOrder(String what, double lower, double upper, int n) {
    if (!(upper >= lower) || n < 1) {
      throw new IllegalArgumentException(
          what + " in order and at least 1 patient, were " + lower + ", " + upper + " and " + n);
    }
  }
}
