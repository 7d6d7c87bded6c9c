package gapwise.synthesis.bayes;

import gapwise.effect.Interval;
import gapwise.numeric.BracketedRoot;
import gapwise.numeric.Continuous;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The shortest interval that holds a share of a distribution; for a distribution of one hump the
 * region of highest density. It ends where the density is the same on both sides, or at an end of
 * the support where the density is higher than at the other limit.
 */
final class ShortestInterval {
  /** Shares left below the lower limit that are tried before the best is narrowed down. */
  private static final int TRIED = 8;

  /**
   * Brent's method, told when to stop: each step takes two quantiles, and the width hardly changes
   * with the share where it is least.
   */
  private static final double RELATIVE = 1e-11;

  private static final double ABSOLUTE = 1e-13;

  private static final int MOST_STEPS = 1000;

  private final Continuous distribution;
  private final double level;

  private ShortestInterval(Continuous distribution, double level) {
    this.distribution = distribution;
    this.level = level;
  }

  /** On the whole line. */
  static Interval of(Continuous distribution, double level) {
    ShortestInterval search = new ShortestInterval(distribution, level);
    return search.inside();
  }

  /**
   * On a support with an end.
   *
   * @param from where it starts
   * @param to where it ends; may be infinite
   */
  static Interval of(Continuous distribution, double level, double from, double to) {
    ShortestInterval search = new ShortestInterval(distribution, level);
    double upper = distribution.quantile(level);
    if (distribution.logDensity(from) >= distribution.logDensity(upper)) {
      return new Interval(from, upper);
    }
    double lower = distribution.quantile(1 - level);
    if (Double.isFinite(to) && distribution.logDensity(to) >= distribution.logDensity(lower)) {
      return new Interval(lower, to);
    }
    return search.inside();
  }

  private Interval inside() {
    int best = 1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < TRIED; i++) {
      double width = upper(share(i)) - lower(share(i));
      if (width < least) {
        least = width;
        best = i;
      }
    }
    double from = share(best - 1);
    double to = share(best + 1);
    double below =
        BracketedRoot.brackets(slope(from), slope(to))
            ? new BrentSolver(RELATIVE, ABSOLUTE).solve(MOST_STEPS, this::slope, from, to)
            : share(best);
    return new Interval(lower(below), upper(below));
  }

  /** The i-th share below; the first and last are as near to none and all as makes no matter. */
  private double share(int i) {
    double part = Math.max(1e-7, Math.min(1 - 1e-7, (double) i / TRIED));
    return part * (1 - level);
  }

  /** Falls below 0 where a little more below would make the interval shorter. */
  private double slope(double below) {
    return distribution.logDensity(lower(below)) - distribution.logDensity(upper(below));
  }

  private double lower(double below) {
    return distribution.quantile(below);
  }

  private double upper(double below) {
    return distribution.quantile(level + below);
  }
}
