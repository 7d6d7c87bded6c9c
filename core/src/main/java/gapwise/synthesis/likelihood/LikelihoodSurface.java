package gapwise.synthesis.likelihood;

import gapwise.numeric.GaussHermite;
import org.apache.commons.numbers.core.Sum;

/**
 * The log likelihood of all studies at one place (mean, tau, intercepts) with the Newton step from
 * there. Intercepts are eliminated study by study, so that time grows with the number of studies
 * and not with its cube: what is left is the 2 by 2 matrix of second derivatives of the likelihood
 * with intercepts at their best, whose negative inverse is the block of the inverse of the full
 * information that belongs to mean and tau.
 */
final class LikelihoodSurface {
  /** The flattest an intercept's curvature is taken to be. */
  private static final double LEAST_CURVATURE = 1e-8;

  private final StudyLikelihoods studies;
  private final GaussHermite rule;
  private final StudyIntegral integral;
  private final boolean intercepts;
  private final int[] multiplicities;

  double mean;
  double tau;
  double[] intercept;
  private double[] modes;

  double value;
  double slopeMean;
  double slopeTau;
  double meanMean;
  double meanTau;
  double tauTau;

  /** Whether a search settled here. */
  boolean settled;

  /** Slopes and bends of the intercepts, kept for their steps. */
  private double[] ownSlope = {};

  private double[] ownBend = {};
  private double[] withMean = {};
  private double[] withTau = {};

  LikelihoodSurface(StudyLikelihoods studies, GaussHermite rule) {
    this(studies, rule, studies.multiplicities());
  }

  private LikelihoodSurface(StudyLikelihoods studies, GaussHermite rule, int[] multiplicities) {
    this.studies = studies;
    this.rule = rule;
    this.multiplicities = multiplicities;
    integral = new StudyIntegral(studies, rule);
    intercepts = studies.hasIntercepts();
    int k = studies.size();
    modes = new double[k];
    intercept = new double[intercepts ? k : 0];
    for (int i = 0; i < intercept.length; i++) {
      intercept[i] = studies.startIntercept(i);
    }
    if (intercepts) {
      ownSlope = new double[k];
      ownBend = new double[k];
      withMean = new double[k];
      withTau = new double[k];
    }
  }

  /** Moves to a place and works everything out there. */
  void moveTo(double newMean, double newTau) {
    mean = newMean;
    tau = newTau;
    evaluate();
  }

  /** Where the modes probably are, from each study's own value. */
  void guessModes() {
    for (int i = 0; i < modes.length; i++) {
      double information = studies.startInformation(i);
      modes[i] = (studies.start(i) - mean) * tau / (tau * tau + 1 / information);
    }
  }

  void evaluate() {
    Sum sum = Sum.create();
    slopeMean = 0;
    slopeTau = 0;
    meanMean = 0;
    meanTau = 0;
    tauTau = 0;
    for (int i = 0; i < modes.length; i++) {
      int times = multiplicities[i];
      if (times == 0) {
        continue;
      }
      integral.at(i, mean, tau, intercepts ? intercept[i] : 0, modes[i]);
      modes[i] = integral.mode;
      sum.add(times * integral.value);
      double[] g = integral.gradient;
      double[][] h = integral.hessian;
      slopeMean += times * g[0];
      slopeTau += times * g[1];
      meanMean += times * h[0][0];
      meanTau += times * h[0][1];
      tauTau += times * h[1][1];
      if (intercepts) {
        eliminate(i, g, h);
      }
    }
    value = sum.getAsDouble();
  }

  private void eliminate(int i, double[] g, double[][] h) {
    double bend = -Math.max(Math.abs(h[2][2]), LEAST_CURVATURE);
    ownSlope[i] = g[2];
    ownBend[i] = bend;
    withMean[i] = h[0][2];
    withTau[i] = h[1][2];
    slopeMean -= h[0][2] * g[2] / bend;
    slopeTau -= h[1][2] * g[2] / bend;
    meanMean -= h[0][2] * h[0][2] / bend;
    meanTau -= h[0][2] * h[1][2] / bend;
    tauTau -= h[1][2] * h[1][2] / bend;
  }

  /** What a step of the intercepts alone promises, twice over. */
  double interceptDecrement() {
    double sum = 0;
    for (int i = 0; i < ownSlope.length; i++) {
      sum -= ownSlope[i] * ownSlope[i] / ownBend[i];
    }
    return sum;
  }

  /** Newton step of a study's intercept that goes with steps of mean and tau. */
  double interceptStep(int i, double stepMean, double stepTau) {
    return -(ownSlope[i] + withMean[i] * stepMean + withTau[i] * stepTau) / ownBend[i];
  }

  /** Another surface of the same studies, at no place yet. */
  LikelihoodSurface another() {
    return with(rule);
  }

  /** Another surface of the same studies by another rule. */
  LikelihoodSurface with(GaussHermite otherRule) {
    return new LikelihoodSurface(studies, otherRule, multiplicities);
  }

  /** Takes the place of another surface, with nothing worked out. */
  void copyPlace(LikelihoodSurface from) {
    mean = from.mean;
    tau = from.tau;
    settled = false;
    System.arraycopy(from.intercept, 0, intercept, 0, intercept.length);
    System.arraycopy(from.modes, 0, modes, 0, modes.length);
  }

  /** Makes a step so short that what is worked out here holds there too. */
  void shift(double[] step) {
    for (int i = 0; i < intercept.length; i++) {
      intercept[i] += interceptStep(i, step[0], step[1]);
    }
    mean += step[0];
    tau = Math.abs(tau + step[1]);
  }

  /** Goes a share of a step away from another surface's place and works everything out there. */
  void stepFrom(LikelihoodSurface from, double[] step, double share) {
    copyPlace(from);
    for (int i = 0; i < intercept.length; i++) {
      intercept[i] += share * from.interceptStep(i, step[0], step[1]);
    }
    moveTo(from.mean + share * step[0], Math.abs(from.tau + share * step[1]));
  }
}
