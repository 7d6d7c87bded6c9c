package gapwise.synthesis.bayes;

/**
 * The true value of a further study at one tau: normal about the centre, which has a distribution
 * of its own. The sum over centres is by the trapezium rule, which for a product of curves like
 * these errs by less than e^-30; the normal density goes from centre to centre by multiplication.
 * Where tau is far narrower than the centre, the sum is over the normal density instead.
 */
final class FurtherStudy {
  /** In standard deviations of the product of both. */
  private static final double STEP = 0.7;

  /** A tau of so little of the centre's standard deviation would take a sum over too many. */
  private static final double NARROW = 0.25;

  /** Of a sum over the normal density, which reaches so many steps to either side. */
  private static final double NORMAL_STEP = 0.5;

  private static final int NORMAL_STEPS = 13;

  /** Centres that far from a value, in tau, add nothing to its density. */
  private static final double FAR = 9;

  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private final SmoothDensity centre;
  private final double tau;
  private final boolean overCentres;

  /** Where the first centre lies, how far they are apart, and what each stands for. */
  private final double first;

  private final double step;
  private final double[] shares;

  FurtherStudy(SmoothDensity centre, double tau) {
    this.centre = centre;
    this.tau = tau;
    double sd = Math.sqrt(centre.variance());
    overCentres = tau >= NARROW * sd;
    if (overCentres) {
      double length = centre.to() - centre.from();
      int count = (int) Math.ceil(length / (STEP / Math.sqrt(1 / (sd * sd) + 1 / (tau * tau)))) + 1;
      first = centre.from();
      step = length / (count - 1);
      shares = new double[count];
      for (int i = 0; i < count; i++) {
        shares[i] =
            Math.exp(centre.logDensity(Math.min(centre.to(), first + i * step)) - centre.logMass());
      }
    } else {
      first = -NORMAL_STEPS * NORMAL_STEP * tau;
      step = NORMAL_STEP * tau;
      shares = new double[2 * NORMAL_STEPS + 1];
      for (int i = 0; i < shares.length; i++) {
        double u = (i - NORMAL_STEPS) * NORMAL_STEP;
        shares[i] = Math.exp(-u * u / 2);
      }
    }
    double sum = 0;
    for (double share : shares) {
      sum += share;
    }
    for (int i = 0; i < shares.length; i++) {
      shares[i] /= sum;
    }
  }

  /** The density of a true value at x. */
  double density(double x) {
    return overCentres ? aboutCentres(x) : aboutNormal(x);
  }

  private double aboutNormal(double x) {
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += shares[i] * Math.exp(centre.logDensity(x - first - i * step) - centre.logMass());
    }
    return sum;
  }

  private double aboutCentres(double x) {
    int near = (int) Math.max(0, Math.min(shares.length - 1, Math.round((x - first) / step)));
    double off = (x - first - near * step) / tau;
    double stride = step / tau;
    if (Math.abs(off) > FAR) {
      return 0;
    }
    double least = Math.exp(-FAR * FAR / 2);
    double sum =
        shares[near] + side(near, 1, off, stride, least) + side(near, -1, -off, stride, least);
    return sum * Math.exp(-off * off / 2) / tau / ROOT_TWO_PI;
  }

  /** Centres on one side, each normal density over that at the nearest one. */
  private double side(int near, int way, double off, double stride, double least) {
    double ratio = Math.exp(stride * (off - stride / 2));
    double shrink = Math.exp(-stride * stride);
    double density = 1;
    double sum = 0;
    for (int i = near + way; i >= 0 && i < shares.length; i += way) {
      density *= ratio;
      if (density < least) {
        break;
      }
      ratio *= shrink;
      sum += shares[i] * density;
    }
    return sum;
  }
}
