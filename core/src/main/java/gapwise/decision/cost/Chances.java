package gapwise.decision.cost;

/** Rates and chances of different spans of time. A rate acts evenly over its time. */
public final class Chances {
  private Chances() {}

  /** The chance within a time at a rate: {@code 1 - exp(-rate time)}; both 0 or more. */
  public static double ofRate(double rate, double time) {
    return -Math.expm1(-rate * time);
  }

  /**
   * The chance of a month whose twelve in a row make the chance of a year: {@code 1 - (1 -
   * p)^(1/12)}, which is less than a twelfth turned over twelve times.
   *
   * @param ofYear 0 to 1
   */
  public static double ofMonth(double ofYear) {
    if (!(ofYear >= 0 && ofYear <= 1)) {
      throw new IllegalArgumentException("a chance lies from 0 to 1, was " + ofYear);
    }
    return -Math.expm1(Math.log1p(-ofYear) / 12);
  }

  /**
   * The chance of each of several events within a time, of which the first to come shuts out the
   * others: {@code r_i/R (1 - exp(-R t))}, R the sum of rates.
   *
   * @param rates 0 or more
   */
  public static double[] competing(double[] rates, double time) {
    double all = 0;
    for (double rate : rates) {
      all += rate;
    }
    double[] chances = new double[rates.length];
    for (int i = 0; i < rates.length; i++) {
      chances[i] = all > 0 ? rates[i] / all * ofRate(all, time) : 0;
    }
    return chances;
  }
}
