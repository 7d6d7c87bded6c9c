package gapwise.synthesis.bayes;

/**
 * What is believed, before the studies, of the centre about which true values are normal on the
 * analysis scale.
 */
public sealed interface CentrePrior {
  /** Logarithm of the density, up to a constant. */
  double logDensity(double centre);

  /**
   * Whether what it and a prior of tau leave after some studies of counts is well a distribution.
   *
   * @param studies at least 1
   */
  default boolean isProper(TauPrior tau, int studies) {
    return true;
  }

  /** Every share alike for the middle study, so its logit has a logistic distribution. */
  record UniformShare() implements CentrePrior {
    @Override
    public double logDensity(double centre) {
      double size = Math.abs(centre);
      return -size - 2 * Math.log1p(Math.exp(-size));
    }
  }

  /**
   * Every rate alike for the middle study, so the density of its logarithm rises like the rate. No
   * distribution by itself; with a study of some time the posterior is one.
   */
  record UniformRate() implements CentrePrior {
    @Override
    public double logDensity(double centre) {
      return centre;
    }

    /**
     * With k studies and a large tau the centre has the density exp(centre - k centre^2/(2 tau^2)),
     * whose mass grows like exp(tau^2/(2k)). A half-normal prior of scale s falls faster if s^2 is
     * less than k; twice as fast is asked, so that no more than the tails hangs on it.
     */
    @Override
    public boolean isProper(TauPrior tau, int studies) {
      return !(tau instanceof TauPrior.HalfNormal normal)
          || 2 * normal.scale() * normal.scale() <= studies;
    }
  }

  /**
   * The prior of Jeffreys for the rate of the middle study, as if it were the rate of Poisson
   * counts by itself: its density falls like one over the root of the rate, so that of the
   * logarithm rises like the root (Jeffreys, Proc R Soc A 1946;186:453, from memory). No
   * distribution by itself; with a study of some time, without an event too, the posterior is one.
   */
  record JeffreysRate() implements CentrePrior {
    @Override
    public double logDensity(double centre) {
      return centre / 2;
    }

    /** As for every rate alike, but the mass grows like exp(tau^2/(8k)) only. */
    @Override
    public boolean isProper(TauPrior tau, int studies) {
      return !(tau instanceof TauPrior.HalfNormal normal)
          || normal.scale() * normal.scale() <= 2 * studies;
    }
  }

  /**
   * Normal.
   *
   * @param mean finite
   * @param standardDeviation above 0
   */
  record Normal(double mean, double standardDeviation) implements CentrePrior {
    public Normal {
      if (!(Double.isFinite(mean) && standardDeviation > 0 && Double.isFinite(standardDeviation))) {
        throw new IllegalArgumentException("no prior: " + mean + " +- " + standardDeviation);
      }
    }

    @Override
    public double logDensity(double centre) {
      double z = (centre - mean) / standardDeviation;
      return -z * z / 2;
    }
  }
}
