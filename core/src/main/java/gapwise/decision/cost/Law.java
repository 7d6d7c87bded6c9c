package gapwise.decision.cost;

import gapwise.numeric.RandomValues;

/** How an uncertain input is spread, by its mean and standard deviation or its interval. */
public sealed interface Law permits Law.Beta, Law.Gamma, Law.LogNormal, Law.Known {
  /** One value. */
  double draw(RandomValues random);

  /** The mean of all values. */
  double mean();

  /**
   * A value without uncertainty.
   *
   * @param mean finite
   */
  record Known(double mean) implements Law {
    public Known {
      if (!Double.isFinite(mean)) {
        throw new IllegalArgumentException("no value: " + mean);
      }
    }

    @Override
    public double draw(RandomValues random) {
      return mean;
    }
  }

  /**
   * A share or a utility between 0 and 1.
   *
   * @param a first shape, above 0
   * @param b second shape, above 0
   */
  record Beta(double a, double b) implements Law {
    public Beta {
      positive(a, b);
    }

    /**
     * By moments: k = m(1 - m)/s^2 - 1, a = mk, b = (1 - m)k.
     *
     * @param mean above 0, below 1
     * @param sd above 0, below root(m(1 - m))
     */
    public static Beta of(double mean, double sd) {
      double k = mean * (1 - mean) / (sd * sd) - 1;
      return new Beta(mean * k, (1 - mean) * k);
    }

    @Override
    public double draw(RandomValues random) {
      return random.beta(a, b);
    }

    @Override
    public double mean() {
      return a / (a + b);
    }
  }

  /**
   * A cost: 0 or more, with a long tail.
   *
   * @param shape above 0
   * @param scale above 0
   */
  record Gamma(double shape, double scale) implements Law {
    public Gamma {
      positive(shape, scale);
    }

    /**
     * By moments: shape m^2/s^2, scale s^2/m.
     *
     * @param mean above 0
     * @param sd above 0
     */
    public static Gamma of(double mean, double sd) {
      return new Gamma(mean * mean / (sd * sd), sd * sd / mean);
    }

    @Override
    public double draw(RandomValues random) {
      return scale * random.gamma(shape);
    }

    @Override
    public double mean() {
      return shape * scale;
    }
  }

  /**
   * A cost with a longer tail, or a ratio.
   *
   * @param mu mean of the logarithm
   * @param sigma standard deviation of the logarithm, above 0
   */
  record LogNormal(double mu, double sigma) implements Law {
    /** Width of a 95 % interval in standard errors. */
    private static final double WIDTH = 3.919928;

    public LogNormal {
      if (!Double.isFinite(mu)) {
        throw new IllegalArgumentException("no mean of logarithms: " + mu);
      }
      positive(sigma, 1);
    }

    /**
     * By moments: sigma^2 = ln(1 + sd^2/m^2), mu = ln m - sigma^2/2.
     *
     * @param mean above 0
     * @param sd above 0
     */
    public static LogNormal of(double mean, double sd) {
      double variance = Math.log1p(sd * sd / (mean * mean));
      return new LogNormal(Math.log(mean) - variance / 2, Math.sqrt(variance));
    }

    /**
     * A ratio by its 95 % interval: its median is the estimate, sigma = ln(upper/lower)/3.919928.
     *
     * @param lower above 0
     */
    public static LogNormal ofRatio(double estimate, double lower, double upper) {
      return new LogNormal(Math.log(estimate), Math.log(upper / lower) / WIDTH);
    }

    @Override
    public double draw(RandomValues random) {
      return Math.exp(mu + sigma * random.normal());
    }

    @Override
    public double mean() {
      return Math.exp(mu + sigma * sigma / 2);
    }
  }

  private static void positive(double first, double second) {
    if (!(first > 0 && second > 0 && Double.isFinite(first) && Double.isFinite(second))) {
      throw new IllegalArgumentException(
          "a law needs numbers above 0, had " + first + " and " + second);
    }
  }
}
