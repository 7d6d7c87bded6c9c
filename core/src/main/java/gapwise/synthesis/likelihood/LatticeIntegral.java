package gapwise.synthesis.likelihood;

import static gapwise.synthesis.likelihood.StudyLikelihoods.T;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TT;
import static gapwise.synthesis.likelihood.StudyLikelihoods.VALUE;

import gapwise.budget.Work;

/**
 * The same integral by the trapezium rule on a lattice about the mode, halved until the sums over
 * its even and its odd points agree: the integrand is analytic with one hump, so that the rule
 * converges faster than any power of the step (Trefethen and Weideman, SIAM Rev 2014;56:385) and
 * holds where no fixed number of Gauss-Hermite points does. With l the log likelihood at the true
 * value and E over its distribution given the study, the derivatives are
 *
 * <p>by mean E l', E l'' + Var l'; by tau E u l', E u^2 l'' + Var(u l'); E u l'' + Cov(l', u l').
 *
 * <p>For models without intercepts.
 */
final class LatticeIntegral extends TrueValueIntegral {
  /** In widths of the hump at its mode. */
  private static final double STEP = 0.55;

  /** So near the two sums must be; the rule on all points then errs by the square of it. */
  private static final double AGREE = 1e-6;

  private static final double LEAST_SHARE = 1e-18;

  private static final int MOST_HALVINGS = 12;

  private double shares;
  private double sharesOfEven;
  private double slope;
  private double slopeByTau;
  private double bend;
  private double bendByBoth;
  private double bendByTau;
  private double slopeSquare;
  private double slopeProduct;
  private double slopeByTauSquare;

  LatticeIntegral(StudyLikelihoods studies) {
    super(studies);
  }

  @Override
  void at(int study, double mean, double tau, double intercept, double from) {
    Work.check();
    if (tau == 0) {
      withoutSpread(study, mean, intercept);
      return;
    }
    mode = findMode(study, mean, tau, intercept, from);
    studies.second(study, mean + tau * mode, intercept, d);
    double top = d[VALUE] - mode * mode / 2;
    double step = STEP / Math.sqrt(1 - tau * tau * d[TT]);
    for (int halving = 0; ; halving++, step /= 2) {
      sum(study, mean, tau, top, step);
      double odd = shares - sharesOfEven;
      if (Math.abs(sharesOfEven - odd) <= AGREE * shares || halving == MOST_HALVINGS) {
        break;
      }
    }
    value = top + Math.log(shares * step / Math.sqrt(2 * Math.PI));
    double first = slope / shares;
    double second = slopeByTau / shares;
    gradient[0] = first;
    gradient[1] = second;
    both(hessian, 0, 0, (bend + slopeSquare) / shares - first * first);
    both(hessian, 1, 0, (bendByBoth + slopeProduct) / shares - first * second);
    both(hessian, 1, 1, (bendByTau + slopeByTauSquare) / shares - second * second);
  }

  private void sum(int study, double mean, double tau, double top, double step) {
    shares = 0;
    sharesOfEven = 0;
    slope = 0;
    slopeByTau = 0;
    bend = 0;
    bendByBoth = 0;
    bendByTau = 0;
    slopeSquare = 0;
    slopeProduct = 0;
    slopeByTauSquare = 0;
    for (int place = 0; add(study, mean, tau, top, step, place); place++) {
      Work.check();
    }
    for (int place = -1; add(study, mean, tau, top, step, place); place--) {
      Work.check();
    }
  }

  /** Adds one point; false where it and all beyond it add nothing. */
  private boolean add(int study, double mean, double tau, double top, double step, int place) {
    double u = mode + place * step;
    studies.second(study, mean + tau * u, 0, d);
    double share = Math.exp(d[VALUE] - u * u / 2 - top);
    if (!(share > LEAST_SHARE)) {
      return false;
    }
    double l = d[T];
    double ll = d[TT];
    shares += share;
    sharesOfEven += place % 2 == 0 ? share : 0;
    slope += share * l;
    slopeByTau += share * u * l;
    bend += share * ll;
    bendByBoth += share * u * ll;
    bendByTau += share * u * u * ll;
    slopeSquare += share * l * l;
    slopeProduct += share * u * l * l;
    slopeByTauSquare += share * u * u * l * l;
    return true;
  }
}
