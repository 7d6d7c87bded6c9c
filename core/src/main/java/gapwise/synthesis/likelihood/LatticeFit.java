package gapwise.synthesis.likelihood;

import gapwise.budget.Work;
import java.util.Optional;

/**
 * The top of a likelihood whose integrals no fixed number of points holds, because studies at a
 * limit leave tau large: the same sums on lattices that are refined until they stand still, climbed
 * by Newton's method with differences for derivatives. For models without intercepts.
 */
final class LatticeFit {
  /** Of a central difference, on the analysis scale and of the logarithm of tau. */
  private static final double DIFFERENCE = 1e-3;

  private static final int USUAL_POINTS = 25;

  /** So far from the lattice's log likelihood, estimates lie some 1e-4 standard errors off. */
  private static final double COARSE = 1e-5;

  /**
   * Of a standard error, or of tau: what few points may differ by without a word. Common practice,
   * no source.
   */
  private static final double NEAR = 0.05;

  private static final double SETTLED = 1e-9;

  private static final double LONGEST = 1;

  private static final int MOST_STEPS = 60;

  private static final int MOST_HALVINGS = 30;

  /**
   * How fine and how far.
   *
   * @param points of the quadrature that was asked for
   * @param furthest tau at which a likelihood is taken to rise without end
   */
  record Bounds(int points, double furthest) {}

  private final MarginalLikelihood likelihood;
  private double mean;
  private double logTau;
  private double value;

  private LatticeFit(StudyLikelihoods studies, double mean, double tau) {
    likelihood = new MarginalLikelihood(studies);
    this.mean = mean;
    logTau = Math.log(tau);
    value = at(mean, logTau);
  }

  /**
   * A fit as it is, or worked out anew where the points are too coarse; few points are taken as
   * they are asked for, and called too coarse where their fit is another.
   */
  static LikelihoodFit refined(StudyLikelihoods studies, LikelihoodFit fit, Bounds bounds) {
    if (!(fit instanceof LikelihoodFit.Estimate top)
        || studies.hasIntercepts()
        || !(top.tau() > 0)) {
      return fit;
    }
    LatticeFit lattice = new LatticeFit(studies, top.estimate(), top.tau());
    if (Math.abs(lattice.value - top.logLikelihood()) < COARSE) {
      return fit;
    }
    Optional<LikelihoodFit.Estimate> found = lattice.climb(Math.log(bounds.furthest()));
    if (bounds.points() >= USUAL_POINTS) {
      return found.<LikelihoodFit>map(one -> one).orElse(fit);
    }
    return found.isPresent() && near(found.get(), top) ? fit : top.tooCoarse();
  }

  private static boolean near(LikelihoodFit.Estimate one, LikelihoodFit.Estimate other) {
    return Math.abs(one.estimate() - other.estimate()) < NEAR * one.standardError()
        && Math.abs(one.standardError() - other.standardError()) < NEAR * one.standardError()
        && Math.abs(one.tau() - other.tau()) < NEAR * one.tau();
  }

  private double at(double centre, double log) {
    Work.check();
    return likelihood.at(Math.exp(log)).log(centre);
  }

  private Optional<LikelihoodFit.Estimate> climb(double furthest) {
    for (int i = 0; i < MOST_STEPS && logTau < furthest; i++) {
      Bends bends = bends();
      if (!bends.isTop() && Math.abs(logTau) > LONGEST * MOST_STEPS / 2) {
        return Optional.empty();
      }
      double[] step = bends.step();
      if (bends.isTop() && bends.promise(step) < SETTLED) {
        return Optional.of(
            new LikelihoodFit.Estimate(
                mean,
                bends.standardError(),
                Math.exp(logTau),
                value,
                true,
                LikelihoodFit.Points.REFINED));
      }
      if (!rises(step)) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private boolean rises(double[] step) {
    double share = 1;
    for (int i = 0; i < MOST_HALVINGS; i++) {
      double next = at(mean + share * step[0], logTau + share * step[1]);
      if (next > value) {
        mean += share * step[0];
        logTau += share * step[1];
        value = next;
        return true;
      }
      share /= 2;
    }
    return false;
  }

  /** Slopes and second derivatives by mean and logarithm of tau. */
  private record Bends(double m, double t, double mm, double mt, double tt) {
    boolean isTop() {
      return mm < 0 && mm * tt - mt * mt > 0;
    }

    /** Newton's step where the surface is a hill, else one uphill by each alone. */
    double[] step() {
      double determinant = mm * tt - mt * mt;
      double byMean = isTop() ? (mt * t - tt * m) / determinant : m / Math.abs(mm);
      double byTau = isTop() ? (mt * m - mm * t) / determinant : t / Math.abs(tt);
      double longest = Math.max(1, Math.max(Math.abs(byMean), Math.abs(byTau)) / LONGEST);
      return new double[] {byMean / longest, byTau / longest};
    }

    double promise(double[] step) {
      return Math.abs(m * step[0]) + Math.abs(t * step[1]);
    }

    /** From the full information; at a top it is the same by tau as by its logarithm. */
    double standardError() {
      return Math.sqrt(-tt / (mm * tt - mt * mt));
    }
  }

  private Bends bends() {
    double h = DIFFERENCE * Math.max(1, Math.exp(logTau));
    double g = DIFFERENCE * 10;
    double up = at(mean + h, logTau);
    double down = at(mean - h, logTau);
    double wide = at(mean, logTau + g);
    double narrow = at(mean, logTau - g);
    double both = at(mean + h, logTau + g) - at(mean + h, logTau - g);
    double other = at(mean - h, logTau + g) - at(mean - h, logTau - g);
    return new Bends(
        (up - down) / (2 * h),
        (wide - narrow) / (2 * g),
        (up - 2 * value + down) / (h * h),
        (both - other) / (4 * h * g),
        (wide - 2 * value + narrow) / (g * g));
  }
}
