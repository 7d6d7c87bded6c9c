package gapwise.synthesis.likelihood;

import gapwise.budget.Work;

/**
 * The likelihood of one study with its true value integrated out over a normal distribution of one
 * spread, at any mean: the sum over a lattice of true values of likelihood times normal density.
 *
 * <p>Idea: the product has one hump and falls on both sides like an exponential at least, so the
 * trapezium rule converges faster than any power of the step (Trefethen and Weideman, SIAM Rev
 * 2014;56:385). The lattice stays where it is when the mean moves, so that the likelihood, which
 * costs most, is worked out once a point for all means; the normal density goes from point to point
 * by multiplication. Points of even and of odd number make two sums of double step; where these
 * disagree the step is halved. Not for use by several threads at once.
 */
final class StudyConvolution {
  /** In standard deviations of the product; the rule then errs by some e^-30 of a normal hump. */
  private static final double STEP = 0.8;

  /**
   * Poisson counts, and empty or full arms of many patients, fall like a double exponential, which
   * is tame up to half pi from the line; the rule then errs by e^-18.
   */
  private static final double WIDEST = 0.55;

  /** Points below this share of the highest are passed over. */
  private static final double LEAST_SHARE = 2e-9;

  /** The rule of half the step errs by the square of this, at least. */
  private static final double ROUGH = 1.5e-3;

  /** How far below the top, in logarithms, the search for it may end. */
  private static final double LOW = 4;

  /**
   * Logarithm by which likelihood and density may change against each other from point to point.
   */
  private static final double STEEP = 8;

  private static final int MOST_HALVINGS = 8;

  /** Where the likelihood at the top nears the end of doubles, others are kept over it. */
  private static final double SMALL = 1e-200;

  private static final double LOG_ROOT_TWO_PI = Math.log(2 * Math.PI) / 2;

  private final StudyLikelihoods studies;
  private final int study;
  private final double tau;
  private final StudyLattices lattices;
  private final double[] d = new double[StudyLikelihoods.LENGTH];

  /** How far the top of the product goes when the mean goes one. */
  private final double follow;

  private StudyLattices.Lattice lattice;
  private double step;
  private int halvings;
  private long top;
  private double lastMean;

  private double even;
  private double odd;

  /** With lattices of its own. */
  StudyConvolution(StudyLikelihoods studies, int study, double tau) {
    this(studies, study, tau, StudyLattices.fresh(studies, study));
  }

  /**
   * @param tau standard deviation of true values, at least 0
   */
  StudyConvolution(StudyLikelihoods studies, int study, double tau, StudyLattices lattices) {
    this.studies = studies;
    this.study = study;
    this.tau = tau;
    this.lattices = lattices;
    double information = studies.startInformation(study);
    lastMean = studies.start(study);
    follow = 1 / (1 + information * tau * tau);
    double narrow = STEP / Math.sqrt(information + 1 / (tau * tau));
    lattice = lattices.of(tau == 0 ? WIDEST : Math.min(WIDEST, narrow), lastMean);
    step = lattice.step();
    top = Math.round(lastMean / step);
  }

  /** Logarithm of the likelihood where true values lie about a mean. */
  double log(double mean) {
    if (tau == 0) {
      return value(mean);
    }
    Work.check();
    top += Math.round((mean - lastMean) * follow / step);
    lastMean = mean;
    while (true) {
      climb(mean);
      double height = lattice.at(top);
      if (!lattice.keeps(top) || !(height > SMALL && height < 1 / SMALL)) {
        lattice.moveTo(top);
        height = lattice.at(top);
      }
      even = height;
      odd = 0;
      add(mean, 1);
      add(mean, -1);
      double sum = even + odd;
      if (Math.abs(even - odd) <= ROUGH * sum || halvings == MOST_HALVINGS) {
        double off = (top * step - mean) / tau;
        return lattice.reference() - off * off / 2 + Math.log(sum * step / tau) - LOG_ROOT_TWO_PI;
      }
      halve();
    }
  }

  /** Adds the points on one side of the top, each normal density over that at the top. */
  private void add(double mean, int way) {
    double stride = way * step / tau;
    double off = (top * step - mean) / tau;
    double ratio = Math.exp(-stride * (off + stride / 2));
    double shrink = Math.exp(-stride * stride);
    double least = LEAST_SHARE * even;
    double density = 1;
    boolean steep = Math.abs(stride * off) > STEEP;
    boolean isOdd = true;
    for (long m = top + way; ; m += way) {
      density *= ratio;
      ratio *= shrink;
      double term = steep ? over(m, mean) : density * lattice.at(m);
      if (!(term > least)) {
        return;
      }
      if (isOdd) {
        odd += term;
      } else {
        even += term;
      }
      isOdd = !isOdd;
    }
  }

  /** One term by its logarithm, where the two factors leave the range of numbers one by one. */
  private double over(long m, double mean) {
    double off = m * step - mean;
    double offTop = top * step - mean;
    double densities = (offTop - off) * (offTop + off) / (2 * tau * tau);
    return Math.exp(lattice.log(m) - lattice.reference() + densities);
  }

  /**
   * Goes to a lattice point near the top of the product by steps of Newton, which are held to half
   * the last one where they turn back.
   */
  private void climb(double mean) {
    long most = Long.MAX_VALUE / 4;
    long last = 0;
    while (true) {
      studies.slopes(study, top * step, 0, d);
      double slope = d[StudyLikelihoods.T] - (top * step - mean) / (tau * tau);
      double bend = 1 / (tau * tau) - d[StudyLikelihoods.TT];
      if (slope * slope <= 2 * LOW * bend) {
        return;
      }
      long move = Math.round(slope / bend / step);
      if (last != 0 && move > 0 != last > 0) {
        most = Math.abs(last) / 2;
      }
      last = Math.max(-most, Math.min(most, move));
      if (last == 0) {
        return;
      }
      top += last;
    }
  }

  private void halve() {
    top *= 2;
    halvings++;
    lattice = lattices.of(step / 2, top * (step / 2));
    step = lattice.step();
  }

  private double value(double theta) {
    studies.second(study, theta, 0, d);
    return d[StudyLikelihoods.VALUE];
  }
}
