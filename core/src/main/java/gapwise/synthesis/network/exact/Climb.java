package gapwise.synthesis.network.exact;

import gapwise.budget.Work;
import gapwise.numeric.CholeskyFactor;

/**
 * The top of a likelihood by Newton's method, on all numbers or on those that some directions span,
 * cut back where a step does not rise and bent where the likelihood is no hill.
 */
final class Climb {
  /** The rest of the way is below a millionth of a standard error. */
  private static final double SETTLED = 1e-12;

  private static final int MOST_STEPS = 100;

  private static final int MOST_HALVINGS = 40;

  /** No single step goes farther on the log scale, since far away nothing is known. */
  private static final double FARTHEST_STEP = 2;

  /**
   * Spreads of log odds ratios beyond this, where two studies in three differ by a factor of
   * thousands, are not looked at: integrals over so wide a spread may go wrong.
   */
  static final double WIDEST = 8;

  private final CountLikelihood likelihood;

  Climb(CountLikelihood likelihood) {
    this.likelihood = likelihood;
  }

  /**
   * Where it ended.
   *
   * @param point effects and tau, which is 0 or above
   * @param local the likelihood there
   * @param settled whether the search came to an end of its own
   */
  record Top(double[] point, LocalLikelihood local, boolean settled) {
    double value() {
      return local.value;
    }

    double tau() {
      return point[point.length - 1];
    }

    /** Whether the spread would rather be wider than any that is looked at. */
    boolean isTooWide() {
      return tau() >= WIDEST;
    }
  }

  /** All effects free, tau held. */
  Top withTau(double[] effects, double tau) {
    int p = likelihood.effects();
    double[] start = effects.clone();
    start[p] = tau;
    return from(start, unit(p + 1, p));
  }

  /** Everything free. */
  Top free(double[] start) {
    return from(start, unit(start.length, start.length));
  }

  /** The first unit vectors. */
  static double[][] unit(int size, int count) {
    double[][] directions = new double[count][size];
    for (int i = 0; i < count; i++) {
      directions[i][i] = 1;
    }
    return directions;
  }

  /**
   * From a start along some directions.
   *
   * @param start effects and tau
   * @param directions each as long as the start
   */
  Top from(double[] start, double[][] directions) {
    double[] point = start.clone();
    LocalLikelihood local = likelihood.at(point);
    for (int step = 0; step < MOST_STEPS; step++) {
      Work.check();
      double[] slopes = times(directions, local.slopes);
      double[] way = hill(bends(directions, local.bends)).solve(slopes);
      double promise = 0;
      for (int i = 0; i < way.length; i++) {
        promise += way[i] * slopes[i];
      }
      double[] move = sum(directions, way, point.length);
      if (promise < SETTLED) {
        return last(point, local, move);
      }
      double share = Math.min(1, FARTHEST_STEP / largest(move));
      LocalLikelihood next = local;
      double[] moved = point;
      for (int cut = 0; cut < MOST_HALVINGS; cut++) {
        moved = moved(point, move, share);
        next = likelihood.at(moved);
        if (next.value > local.value) {
          break;
        }
        share /= 2;
      }
      if (!(next.value > local.value)) {
        return new Top(point, local, promise < Math.sqrt(SETTLED));
      }
      point = moved;
      local = next;
    }
    return new Top(point, local, false);
  }

  /** The last step doubles the digits and is taken on trust unless it clearly falls. */
  private Top last(double[] point, LocalLikelihood local, double[] move) {
    double[] moved = moved(point, move, 1);
    LocalLikelihood next = likelihood.at(moved);
    return next.value > local.value - SETTLED
        ? new Top(moved, next, true)
        : new Top(point, local, true);
  }

  /** The same likelihood with tau and minus tau: it is even in it. */
  private static double[] moved(double[] point, double[] move, double share) {
    double[] moved = point.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += share * move[i];
    }
    int tau = moved.length - 1;
    moved[tau] = Math.min(WIDEST, Math.abs(moved[tau]));
    return moved;
  }

  private static double largest(double[] move) {
    double most = 0;
    for (double one : move) {
      most = Math.max(most, Math.abs(one));
    }
    return most;
  }

  private static double[] times(double[][] directions, double[] slopes) {
    double[] along = new double[directions.length];
    for (int i = 0; i < along.length; i++) {
      for (int k = 0; k < slopes.length; k++) {
        along[i] += directions[i][k] * slopes[k];
      }
    }
    return along;
  }

  private static double[] sum(double[][] directions, double[] shares, int size) {
    double[] sum = new double[size];
    for (int i = 0; i < shares.length; i++) {
      for (int k = 0; k < size; k++) {
        sum[k] += shares[i] * directions[i][k];
      }
    }
    return sum;
  }

  /** Second derivatives along directions, with their sign turned. */
  static double[][] bends(double[][] directions, double[][] bends) {
    int n = directions.length;
    double[][] along = new double[n][n];
    for (int i = 0; i < n; i++) {
      double[] row = times(bends, directions[i]);
      for (int j = 0; j < n; j++) {
        for (int k = 0; k < row.length; k++) {
          along[i][j] -= directions[j][k] * row[k];
        }
      }
    }
    return along;
  }

  /** A matrix to step by: the one given, or one raised on its diagonal until it is a hill's. */
  private static CholeskyFactor hill(double[][] bends) {
    double most = 0;
    for (int i = 0; i < bends.length; i++) {
      most = Math.max(most, Math.abs(bends[i][i]));
    }
    CholeskyFactor factor = CholeskyFactor.of(bends);
    for (double raised = 1e-3; !factor.isProper() && raised < 1e12; raised *= 4) {
      double[][] higher = new double[bends.length][];
      for (int i = 0; i < bends.length; i++) {
        higher[i] = bends[i].clone();
        higher[i][i] += raised * Math.max(most, 1e-8);
      }
      factor = CholeskyFactor.of(higher);
    }
    return factor;
  }
}
