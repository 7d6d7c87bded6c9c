package gapwise.synthesis.likelihood;

import gapwise.effect.Interval;
import gapwise.numeric.BetaQuantile;
import org.apache.commons.numbers.gamma.RegularizedBeta;

/**
 * The beta distribution of the true shares of studies, on the logit scale. It takes mean and
 * correlation as known: how uncertain they are is not in it.
 *
 * @param logit of the mean share
 * @param intraclassCorrelation from 0, where every study has the mean share, to below 1
 */
public record FittedBeta(double logit, double intraclassCorrelation) {
  public FittedBeta {
    if (!(Double.isFinite(logit) && intraclassCorrelation >= 0 && intraclassCorrelation < 1)) {
      throw new IllegalArgumentException(
          "no distribution: logit " + logit + ", rho " + intraclassCorrelation);
    }
  }

  /** The logits between which a share of studies lies, half of the rest on each side. */
  public Interval interval(double level) {
    if (intraclassCorrelation == 0) {
      return new Interval(logit, logit);
    }
    double tail = (1 - level) / 2;
    return new Interval(-upper(tail, otherShape(), shape()), upper(tail, shape(), otherShape()));
  }

  /** The logit that a share of a beta distribution passes with some probability. */
  private static double upper(double tail, double a, double b) {
    double share = BetaQuantile.upperTail(tail, a, b);
    double rest = BetaQuantile.lowerTail(tail, b, a);
    // A share below the smallest double is shown as 0 or 100 % all the same.
    return Math.log(Math.max(share, Double.MIN_NORMAL))
        - Math.log(Math.max(rest, Double.MIN_NORMAL));
  }

  /** The share of studies, from 0 to 1, whose true share has a logit below some value. */
  public double below(double value) {
    if (intraclassCorrelation == 0) {
      return value > logit ? 1 : value < logit ? 0 : 0.5;
    }
    return value <= 0
        ? RegularizedBeta.value(1 / (1 + Math.exp(-value)), shape(), otherShape())
        : RegularizedBeta.complement(1 / (1 + Math.exp(value)), otherShape(), shape());
  }

  private double shape() {
    return (1 / intraclassCorrelation - 1) / (1 + Math.exp(-logit));
  }

  private double otherShape() {
    return (1 / intraclassCorrelation - 1) / (1 + Math.exp(logit));
  }
}
