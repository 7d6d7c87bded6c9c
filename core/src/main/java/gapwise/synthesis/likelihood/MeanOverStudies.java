package gapwise.synthesis.likelihood;

/**
 * The mean over studies of what their true values show, where the fitted mean on the logit or log
 * scale is carried back to the median.
 */
public final class MeanOverStudies {
  /** The normal density is below the smallest double share beyond this. */
  private static final double REACH = 9;

  /**
   * Step of a trapezium rule, over tau where that is above 1. On the whole line the rule errs by
   * exp of minus 2 pi^2/step^2 for the density and 2 pi^2/(step tau) for the poles of the inverse
   * logit, both below the last digit of a double.
   */
  private static final double STEP = 0.5;

  /** For the same to ten digits: by the formulas above the rule errs by e^-22. */
  private static final double WIDE_STEP = 0.9;

  private static final double FAR = 6.7;

  private MeanOverStudies() {}

  /**
   * Mean of the inverse logit over a normal distribution.
   *
   * @param tau at least 0
   */
  public static double proportion(double mean, double tau) {
    double sum = 0;
    double weights = 0;
    int steps = (int) Math.ceil(2 * REACH * Math.max(1, tau) / STEP);
    for (int i = 0; i <= steps; i++) {
      double u = REACH * (2.0 * i / steps - 1);
      double weight = Math.exp(-u * u / 2);
      sum += weight / (1 + Math.exp(-(mean + tau * u)));
      weights += weight;
    }
    return Math.min(1, sum / weights);
  }

  /**
   * Logit of the mean of the inverse logit, with all its digits near 0 and 1 too.
   *
   * @param tau at least 0
   */
  public static double logitOfProportion(double mean, double tau) {
    double with = 0;
    double without = 0;
    int steps = (int) Math.ceil(2 * FAR * Math.max(1, tau) / WIDE_STEP);
    for (int i = 0; i <= steps; i++) {
      double u = FAR * (2.0 * i / steps - 1);
      double e = Math.exp(-Math.abs(mean + tau * u));
      double larger = Math.exp(-u * u / 2) / (1 + e);
      double smaller = larger * e;
      with += mean + tau * u >= 0 ? larger : smaller;
      without += mean + tau * u >= 0 ? smaller : larger;
    }
    return Math.log(with / without);
  }

  /** Mean of the exponential over a normal distribution, exp(mean + tau^2/2). */
  public static double rate(double mean, double tau) {
    return Math.exp(mean + tau * tau / 2);
  }
}
