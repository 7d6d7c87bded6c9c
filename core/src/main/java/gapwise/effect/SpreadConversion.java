package gapwise.effect;

import gapwise.numeric.ReferenceDistribution;
import java.util.OptionalDouble;

/**
 * The standard deviation of patients from what papers print beside a mean instead: its standard
 * error, or its 95 % interval. Cochrane Handbook for Systematic Reviews of Interventions, section
 * 6.5.2; both follow from the standard error of a mean being the deviation over the root of n.
 */
public final class SpreadConversion {
  private SpreadConversion() {}

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
    if (!(upper >= lower) || n < 1) {
      throw new IllegalArgumentException(
          "limits in order and at least 1 patient, were " + lower + ", " + upper + " and " + n);
    }
    if (n == 1) {
      return OptionalDouble.empty();
    }
    double point = ReferenceDistribution.studentT(n - 1).multiplier(0.95);
    return OptionalDouble.of(fromStandardError((upper - lower) / (2 * point), n));
  }
}
