package gapwise.synthesis.bayes;

import java.util.Arrays;

/**
 * The true value of a further study at one tau: normal about the centre, which has a distribution
 * of its own. Of the two, the smoother one is summed over, by the trapezium rule, which for curves
 * like these errs by less than e^-30.
 */
final class FurtherStudy {
  /** In standard deviations of what is summed over. */
  private static final double STEP = 0.5;

  private static final int STEPS = 13;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final SmoothDensity centre;
  private final double tau;
  private final double[] places;
  private final double[] shares;
  private final boolean overCentres;

  FurtherStudy(SmoothDensity centre, double tau) {
    this.centre = centre;
    this.tau = tau;
    double sd = Math.sqrt(centre.variance());
    overCentres = tau >= sd;
    int count =
        overCentres
            ? (int) Math.ceil((centre.to() - centre.from()) / (STEP * sd)) + 1
            : 2 * STEPS + 1;
    places = new double[count];
    shares = new double[count];
    for (int i = 0; i < count; i++) {
      if (overCentres) {
        places[i] = centre.from() + (centre.to() - centre.from()) * i / (count - 1);
        shares[i] = Math.exp(centre.logDensity(places[i]) - centre.logMass());
      } else {
        double u = (i - STEPS) * STEP;
        places[i] = tau * u;
        shares[i] = Math.exp(-u * u / 2);
      }
    }
    double sum = Arrays.stream(shares).sum();
    for (int i = 0; i < count; i++) {
      shares[i] /= sum;
    }
  }

  /** The density of a true value at x. */
  double density(double x) {
    double sum = 0;
    for (int i = 0; i < places.length; i++) {
      double apart = (x - places[i]) / tau;
      sum +=
          shares[i]
              * (overCentres
                  ? Math.exp(-apart * apart / 2) / tau / ROOT_TWO_PI
                  : Math.exp(centre.logDensity(x - places[i]) - centre.logMass()));
    }
    return sum;
  }
}
