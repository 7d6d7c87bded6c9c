package gapwise.effect;

import gapwise.numeric.GammaQuantile;

/** Intervals for one rate from events over person-time. */
public enum RateInterval {
  /** Garwood, Biometrika 1936;28:437, by chi-squared points; exact. */
  EXACT_POISSON {
    @Override
    public Interval of(ArmRate rate, double level) {
      double x = rate.events();
      double tail = (1 - level) / 2;
      double lower = x == 0 ? 0 : GammaQuantile.lowerTail(tail, x) / rate.personTime();
      double upper = GammaQuantile.upperTail(tail, x + 1) / rate.personTime();
      return new Interval(lower, upper);
    }
  };

  /**
   * The interval, in events per unit of person-time.
   *
   * @param level above 0 and below 1, such as 0.95
   */
  public abstract Interval of(ArmRate rate, double level);
}
