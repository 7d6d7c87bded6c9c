package gapwise.synthesis.network.exact;

import gapwise.numeric.CholeskyFactor;
import gapwise.synthesis.network.Comparison;
import java.util.Optional;

/**
 * A top with what the curvature there says of it.
 *
 * @param likelihood with points enough at the top
 * @param top the highest found
 * @param covariance of effects; tau being estimated is allowed for where it is above 0
 * @param converged whether search and integrals settled
 */
record ExactFit(
    CountLikelihood likelihood, Climb.Top top, double[][] covariance, boolean converged) {
  /**
   * Where a search for tau above 0 starts: a spread that odds ratios of one question often have.
   */
  private static final double START = 0.4;

  /** Higher by less than this is no higher. */
  private static final double SAME = 1e-9;

  /** A study's log likelihood is good enough where more points change it by no more. */
  private static final double FINE = 1e-9;

  private static final int MOST_REFITS = 5;

  /** The highest top; empty where no hill could be found within the range of numbers. */
  static Optional<ExactFit> of(CountLikelihood likelihood, boolean random) {
    CountLikelihood used = likelihood;
    boolean fine = false;
    Climb.Top top = highest(used, random);
    for (int turn = 0; turn < MOST_REFITS; turn++) {
      CountLikelihood.Refined refined = used.refinedAt(top.point(), FINE);
      fine = refined.fine();
      if (!refined.changed()) {
        break;
      }
      used = refined.likelihood();
      top = highest(used, random);
    }
    CountLikelihood last = used;
    Climb.Top found = top;
    boolean settled = fine && top.settled() && !top.isTooWide();
    return covariance(top).map(one -> new ExactFit(last, found, one, settled));
  }

  private static Climb.Top highest(CountLikelihood likelihood, boolean random) {
    Climb climb = new Climb(likelihood);
    Climb.Top without = climb.withTau(new double[likelihood.effects() + 1], 0);
    if (!random) {
      return without;
    }
    double[] start = without.point().clone();
    start[likelihood.effects()] = START;
    Climb.Top with = climb.free(start);
    return with.value() > without.value() + SAME ? with : without;
  }

  /** The same top with points enough for another spread. */
  ExactFit refinedAt(double tau) {
    double[] point = top.point().clone();
    point[point.length - 1] = tau;
    CountLikelihood refined = likelihood.refinedAt(point, FINE).likelihood();
    return new ExactFit(
        refined,
        new Climb.Top(top.point(), refined.at(top.point()), top.settled()),
        covariance,
        converged);
  }

  /** Of effects: with tau free where it is above 0, since at 0 the two are without covariance. */
  static Optional<double[][]> covariance(Climb.Top top) {
    int p = top.point().length - 1;
    int free = top.tau() > 0 ? p + 1 : p;
    CholeskyFactor information =
        CholeskyFactor.of(Climb.bends(Climb.unit(p + 1, free), top.local().bends));
    return information.isProper() && Double.isFinite(top.value())
        ? Optional.of(information.inverse())
        : Optional.empty();
  }

  /** The variance of a sum of effects. */
  double variance(double[] sum) {
    return variance(covariance, sum);
  }

  static double variance(double[][] covariance, double[] sum) {
    double variance = 0;
    for (int i = 0; i < covariance.length; i++) {
      for (int j = 0; j < covariance.length; j++) {
        variance += sum[i] * sum[j] * covariance[i][j];
      }
    }
    return variance;
  }

  static double value(double[] point, double[] sum) {
    double value = 0;
    for (int i = 0; i < sum.length; i++) {
      value += point[i] * sum[i];
    }
    return value;
  }

  /** A sum of effects with its standard error. */
  Comparison comparison(double[] sum) {
    return new Comparison(estimate(sum), Math.sqrt(variance(sum)));
  }

  /** The estimate of a sum of effects. */
  double estimate(double[] sum) {
    return value(top.point(), sum);
  }
}
