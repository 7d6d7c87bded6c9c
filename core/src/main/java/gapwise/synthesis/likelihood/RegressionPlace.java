package gapwise.synthesis.likelihood;

import gapwise.numeric.CholeskyFactor;
import org.apache.commons.numbers.core.Sum;

/**
 * The log likelihood of all studies where the columns of their means are taken so many times and
 * true values differ by tau, with its first and second derivatives there and the Newton step away.
 * Time grows with the number of studies.
 */
final class RegressionPlace {
  final LinearMeans means;
  final double[] times;
  final double tau;
  final double value;

  private final double[] modes;

  /** Slope of each study's log likelihood by its mean. */
  private final double[] pulls;

  private final double[] slopes;
  private final double[][] bends;
  private final double[] bendsByTau;
  private final double slopeByTau;
  private final double bendByTau;

  private final CholeskyFactor factor;

  /** How the best multiples move when tau moves, and how steep and bent the likelihood then is. */
  private final double[] follow;

  private final double steepness;
  private final double curvature;

  /**
   * Works everything out.
   *
   * @param tau at least 0
   * @param modes where the search for each study's mode starts
   */
  RegressionPlace(
      LinearMeans means, TrueValueIntegral integral, double[] times, double tau, double[] modes) {
    this.means = means;
    this.times = times;
    this.tau = tau;
    this.modes = modes.clone();
    pulls = new double[modes.length];
    int q = means.columns();
    slopes = new double[q];
    bends = new double[q][q];
    bendsByTau = new double[q];
    Sum sum = Sum.create();
    double slope = 0;
    double bend = 0;
    for (int i = 0; i < modes.length; i++) {
      integral.at(i, means.mean(i, times), tau, 0, modes[i]);
      this.modes[i] = integral.mode;
      pulls[i] = integral.gradient[0];
      sum.add(integral.value);
      slope += integral.gradient[1];
      bend += integral.hessian[1][1];
      for (int a = 0; a < q; a++) {
        double one = means.value(i, a);
        slopes[a] += one * integral.gradient[0];
        bendsByTau[a] += one * integral.hessian[0][1];
        for (int b = 0; b <= a; b++) {
          bends[a][b] -= one * means.value(i, b) * integral.hessian[0][0];
        }
      }
    }
    value = sum.getAsDouble();
    slopeByTau = slope;
    bendByTau = bend;
    factor = CholeskyFactor.of(bends);
    follow = factor.solve(bendsByTau);
    steepness = slopeByTau + dot(bendsByTau, factor.solve(slopes));
    curvature = bendByTau + dot(bendsByTau, follow);
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int j = 0; j < a.length; j++) {
      sum += a[j] * b[j];
    }
    return sum;
  }

  /** The same place by another rule. */
  RegressionPlace by(TrueValueIntegral integral) {
    return new RegressionPlace(means, integral, times, tau, modes);
  }

  /** A step of the multiples and of tau. */
  record Step(double[] times, double tau) {}

  /**
   * Newton's step uphill: the likelihood is concave in the multiples, and its curvature by tau,
   * with the multiples at their best for each, is taken as downhill whatever its sign.
   *
   * @param held whether tau stays as it is
   */
  Step step(boolean held) {
    double byTau = held ? 0 : steepness / Math.max(Math.abs(curvature), least());
    double[] step = factor.solve(slopes);
    for (int j = 0; j < step.length; j++) {
      step[j] += follow[j] * byTau;
    }
    return new Step(step, byTau);
  }

  private double least() {
    return 1e-8 * Math.abs(bendByTau) + 1e-300;
  }

  /** Twice the rise that a step promises. */
  double promise(Step step) {
    return dot(slopes, step.times()) + slopeByTau * step.tau();
  }

  /** A share of a step away. */
  RegressionPlace after(Step step, double share, TrueValueIntegral integral) {
    double[] next = times.clone();
    for (int j = 0; j < next.length; j++) {
      next[j] += share * step.times()[j];
    }
    return new RegressionPlace(means, integral, next, Math.abs(tau + share * step.tau()), modes);
  }

  /** Elsewhere, with modes guessed from each study's own value. */
  RegressionPlace elsewhere(
      double[] other, double otherTau, StudyLikelihoods studies, TrueValueIntegral integral) {
    double[] guessed = new double[modes.length];
    for (int i = 0; i < guessed.length; i++) {
      double within = 1 / studies.startInformation(i);
      guessed[i] =
          (studies.start(i) - means.mean(i, other)) * otherTau / (otherTau * otherTau + within);
    }
    return new RegressionPlace(means, integral, other, otherTau, guessed);
  }

  /**
   * Slope by a common move of the offsets of the means, multiples and tau staying at their best.
   *
   * @param moves how far each study's mean goes
   */
  double slopeBy(double[] moves) {
    return dot(pulls, moves);
  }

  /** Whether the surface is a hill here, so that it may be a top. */
  boolean isHill() {
    return isHill(false);
  }

  /**
   * The same.
   *
   * @param held whether tau stays as it is
   */
  boolean isHill(boolean held) {
    return factor.isProper() && (held || tau == 0 || curvature < 0);
  }

  /** Covariance of the multiples from the information on them at this tau. */
  double[][] covarianceWithin() {
    return factor.inverse();
  }

  /** Largest variance of a multiple that the information at a given tau leaves. */
  double varianceWithin() {
    double most = 0;
    double[][] inverse = factor.inverse();
    for (int j = 0; j < inverse.length; j++) {
      most = Math.max(most, inverse[j][j]);
    }
    return most;
  }

  /**
   * Covariance of the multiples from the full information on them and tau; at a tau of 0 the two
   * have no covariance.
   */
  double[][] covariance() {
    double[][] covariance = factor.inverse();
    for (int a = 0; a < covariance.length; a++) {
      for (int b = 0; b < covariance.length && tau > 0; b++) {
        covariance[a][b] -= follow[a] * follow[b] / curvature;
      }
    }
    return covariance;
  }
}
