package gapwise.numeric;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Random values from one seed: the same seed gives the same values on every machine, since nothing
 * but the bits of {@link SplittableRandom} and arithmetic enters. One stream, for one thread.
 */
public final class RandomValues {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private final SplittableRandom random;

  private RandomValues(SplittableRandom random) {
    this.random = random;
  }

  /** A stream that begins at a seed. */
  public static RandomValues ofSeed(long seed) {
    return new RandomValues(new SplittableRandom(seed));
  }

  /** Above 0 and below 1, every value as likely. */
  public double uniform() {
    return random.nextDouble(Double.MIN_NORMAL, 1);
  }

  /** A whole number from 0 to one below the bound, each as likely. */
  public int below(int bound) {
    return random.nextInt(bound);
  }

  /** Standard normal, by inversion. */
  public double normal() {
    return NORMAL.inverseCumulativeProbability(uniform());
  }

  /** Exponential with mean 1: minus the log of a uniform value. */
  public double exponential() {
    return -Math.log(uniform());
  }

  /**
   * Gamma with scale 1: Marsaglia and Tsang's cube of a normal value, taken or drawn again (ACM
   * Transactions on Mathematical Software 2000;26:363); below shape 1 a value of shape + 1 times a
   * power of a uniform one.
   *
   * @param shape above 0
   */
  public double gamma(double shape) {
    if (!(shape > 0 && shape < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("the shape of a gamma must be above 0, was " + shape);
    }
    if (shape < 1) {
      return gamma(shape + 1) * Math.pow(uniform(), 1 / shape);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double normal = normal();
      double root = 1 + c * normal;
      double cube = root * root * root;
      if (root > 0 && Math.log(uniform()) < normal * normal / 2 + d * (1 - cube + Math.log(cube))) {
        return d * cube;
      }
    }
  }

  /**
   * Beta, from 0 to 1: one gamma value over its sum with another.
   *
   * @param a first shape, above 0
   * @param b second shape, above 0
   */
  public double beta(double a, double b) {
    double first = gamma(a);
    double second = gamma(b);
    return first + second > 0 ? first / (first + second) : a / (a + b);
  }
}
