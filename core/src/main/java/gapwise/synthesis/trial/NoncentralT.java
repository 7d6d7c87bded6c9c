package gapwise.synthesis.trial;

/**
 * Student's t about a value that is not 0: the distribution of {@code (Z + delta)/S}, Z standard
 * normal and {@code S^2} chi-squared over its degrees of freedom.
 *
 * <p>Idea: given S the chance of passing t is that of a normal value, so it is the mean of {@code
 * F(delta - t S)} over S (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2,
 * 1995, chapter 31). The density of S is smooth with one top near 1, so Simpson's rule over the
 * stretch that holds it is exact to some twelve digits; dividing by the sum of the weights spares
 * its constant, which for many degrees of freedom is lost in rounding.
 */
final class NoncentralT {
  private static final int STEPS = 2000;

  /** Standard deviations of S to each side; beyond lie less than 1e-15. */
  private static final double REACH = 9;

  private NoncentralT() {}

  /**
   * The chance of a value above t.
   *
   * @param t finite
   * @param degreesOfFreedom at least 1
   * @param delta finite
   */
  static double above(double t, double degreesOfFreedom, double delta) {
    double spread = 1 / Math.sqrt(2 * degreesOfFreedom);
    double from = Math.max(0, 1 - REACH * spread);
    double step = (1 + REACH * spread - from) / STEPS;
    double sum = 0;
    double all = 0;
    for (int i = 0; i <= STEPS; i++) {
      double s = from + i * step;
      int simpson = i == 0 || i == STEPS ? 1 : i % 2 == 0 ? 2 : 4;
      double weight = simpson * density(s, degreesOfFreedom);
      all += weight;
      sum += weight * Demands.NORMAL.cumulativeProbability(delta - t * s);
    }
    return sum / all;
  }

  /** The density of S over that at 1. */
  private static double density(double s, double degreesOfFreedom) {
    double power = degreesOfFreedom - 1;
    double log = s == 0 ? 0 : power * Math.log(s);
    if (s == 0 && power > 0) {
      return 0;
    }
    return Math.exp(log - degreesOfFreedom * (s - 1) * (s + 1) / 2);
  }
}
