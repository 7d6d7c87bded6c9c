package gapwise.decision.certainty;

/**
 * How many patients a single well-sized study would need: the optimal information size (Guyatt et
 * al., J Clin Epidemiol 2011;64:1283), two-sided 5 % and power 80 %.
 */
public final class InformationSize {
  /** Normal quantiles at 0.975 and 0.80. */
  private static final double Z_TWO_SIDED = 1.959963984540054;

  private static final double Z_POWER = 0.8416212335729143;

  private static final double Z_SQUARED = (Z_TWO_SIDED + Z_POWER) * (Z_TWO_SIDED + Z_POWER);

  private InformationSize() {}

  /**
   * Patients in each of two groups to tell two shares apart.
   *
   * @param one a share above 0 and below 1
   * @param other another share
   */
  public static long ofShares(double one, double other) {
    requireShare(one);
    requireShare(other);
    double difference = one - other;
    if (difference == 0) {
      throw new IllegalArgumentException("two shares alike are told apart by no study");
    }
    return (long)
        Math.ceil(Z_SQUARED * (one * (1 - one) + other * (1 - other)) / (difference * difference));
  }

  /**
   * Patients in each of two groups to tell two means apart.
   *
   * @param standardised their difference in standard deviations, not 0
   */
  public static long ofMeans(double standardised) {
    if (!(Math.abs(standardised) > 0)) {
      throw new IllegalArgumentException("a difference of 0 is found by no study");
    }
    return (long) Math.ceil(2 * Z_SQUARED / (standardised * standardised));
  }

  /**
   * Patients of one group until the 95 % interval of its share is so narrow.
   *
   * @param share above 0 and below 1
   * @param halfWidth half the width of the interval, above 0 and below 1
   */
  public static long ofOneShare(double share, double halfWidth) {
    requireShare(share);
    requireShare(halfWidth);
    return (long)
        Math.ceil(Z_TWO_SIDED * Z_TWO_SIDED * share * (1 - share) / (halfWidth * halfWidth));
  }

  private static void requireShare(double share) {
    if (!(share > 0 && share < 1)) {
      throw new IllegalArgumentException("a share must lie between 0 and 1, was " + share);
    }
  }
}
