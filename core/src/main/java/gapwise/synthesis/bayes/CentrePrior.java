package gapwise.synthesis.bayes;

/**
 * What is believed, before the studies, of the centre about which true values are normal on the
 * analysis scale.
 */
public sealed interface CentrePrior {
  /** Logarithm of the density, up to a constant. */
  double logDensity(double centre);

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
