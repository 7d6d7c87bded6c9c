package gapwise.decision.cost;

import gapwise.numeric.RandomValues;

/**
 * A number that somebody enters, with how uncertain it is.
 *
 * @param mean its value
 * @param sd its standard deviation; 0 where it is taken as known
 */
public record Amount(double mean, double sd) {
  public Amount {
    if (!(Double.isFinite(mean) && sd >= 0 && Double.isFinite(sd))) {
      throw new IllegalArgumentException("no amount: " + mean + ", deviation " + sd);
    }
  }

  /** A number taken as known. */
  public static Amount known(double value) {
    return new Amount(value, 0);
  }

  /** One value: money is gamma, with a long tail upwards. */
  double draw(RandomValues random) {
    Law law = sd > 0 && mean > 0 ? Law.Gamma.of(mean, sd) : new Law.Known(mean);
    return law.draw(random);
  }
}
