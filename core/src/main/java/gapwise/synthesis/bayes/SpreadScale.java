package gapwise.synthesis.bayes;

import gapwise.numeric.Continuous;

/**
 * Places of tau on which the logarithm of its posterior bends evenly: tau = error sinh(place). As a
 * function of tau it bends within the typical standard error of a study about 0 and hardly beyond.
 *
 * @param error typical standard error of a study, above 0
 */
record SpreadScale(double error) {
  double tau(double place) {
    return error * Math.sinh(place);
  }

  double place(double tau) {
    double ratio = tau / error;
    return Math.log(ratio + Math.hypot(ratio, 1));
  }

  /** The places of all tau from one to another. */
  Stretch.Range places(Stretch.Range taus) {
    return new Stretch.Range(place(taus.from()), place(taus.to()));
  }

  /** Logarithm of how fast tau rises with its place. */
  double logSlope(double place) {
    return Math.log(error * Math.cosh(place));
  }

  /** The distribution of tau, from that of its place. */
  Continuous of(SmoothDensity spread) {
    return new Continuous() {
      @Override
      public double below(double tau) {
        return spread.below(place(tau));
      }

      @Override
      public double above(double tau) {
        return spread.above(place(tau));
      }

      @Override
      public double quantile(double probability) {
        return tau(spread.quantile(probability));
      }

      @Override
      public double logDensity(double tau) {
        return spread.logDensity(place(tau)) - logSlope(place(tau));
      }
    };
  }
}
