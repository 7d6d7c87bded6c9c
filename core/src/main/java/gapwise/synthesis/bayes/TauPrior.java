package gapwise.synthesis.bayes;

import java.util.OptionalDouble;

/**
 * What is believed of tau, the standard deviation between studies (not of its square), before the
 * studies: Gelman, Bayesian Anal 2006;1:515.
 */
public sealed interface TauPrior {
  /** Logarithm of the density at a tau inside the support, up to a constant. */
  double logDensity(double tau);

  /** The power a for which the density falls like tau^-a; infinite if it falls faster. */
  double tailExponent();

  /** The tau about which the density changes its course; empty if it never does. */
  OptionalDouble turningPoint();

  /** Where the support starts. */
  default double from() {
    return 0;
  }

  /** Where the support ends; may be infinite. */
  default double to() {
    return Double.POSITIVE_INFINITY;
  }

  /**
   * The positive half of a normal distribution about 0.
   *
   * @param scale its standard deviation before halving, above 0
   */
  record HalfNormal(double scale) implements TauPrior {
    public HalfNormal {
      positive(scale);
    }

    @Override
    public double logDensity(double tau) {
      double z = tau / scale;
      return -z * z / 2;
    }

    @Override
    public double tailExponent() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public OptionalDouble turningPoint() {
      return OptionalDouble.of(scale);
    }
  }

  /**
   * The positive half of a Cauchy distribution about 0.
   *
   * @param scale its median, above 0
   */
  record HalfCauchy(double scale) implements TauPrior {
    public HalfCauchy {
      positive(scale);
    }

    @Override
    public double logDensity(double tau) {
      double z = tau / scale;
      return z < 1 ? -Math.log1p(z * z) : -2 * Math.log(z) - Math.log1p(1 / (z * z));
    }

    @Override
    public double tailExponent() {
      return 2;
    }

    @Override
    public OptionalDouble turningPoint() {
      return OptionalDouble.of(scale);
    }
  }

  /**
   * Every value between two alike.
   *
   * @param from at least 0
   * @param to above it
   */
  record Uniform(double from, double to) implements TauPrior {
    public Uniform {
      if (!(from >= 0 && from < to && Double.isFinite(to))) {
        throw new IllegalArgumentException("no range of tau: " + from + " to " + to);
      }
    }

    @Override
    public double logDensity(double tau) {
      return 0;
    }

    @Override
    public double tailExponent() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public OptionalDouble turningPoint() {
      return OptionalDouble.of(to);
    }
  }

  /** Every value from 0 on alike; no distribution by itself. */
  record Flat() implements TauPrior {
    @Override
    public double logDensity(double tau) {
      return 0;
    }

    @Override
    public double tailExponent() {
      return 0;
    }

    @Override
    public OptionalDouble turningPoint() {
      return OptionalDouble.empty();
    }
  }

  private static void positive(double scale) {
    if (!(scale > 0 && Double.isFinite(scale))) {
      throw new IllegalArgumentException("scale must be above 0, was " + scale);
    }
  }
}
