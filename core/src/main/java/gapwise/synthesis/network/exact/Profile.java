package gapwise.synthesis.network.exact;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The likelihood along one difference between treatments, or along tau, everything else at its best
 * for each value (profile likelihood). A limit is where twice its logarithm has fallen from the top
 * by the square of the normal point.
 */
final class Profile {
  /** Odds of e^60 are as good as none to anyone who reads them. */
  private static final double FARTHEST = 60;

  private static final double SETTLED = 1e-8;

  private static final int MOST_STEPS = 60;

  /** From here the spread is looked for again where it is 0 without being best there. */
  private static final double START = 0.3;

  private final ExactFit fit;
  private final double[] sum;
  private final int solved;
  private final double[][] others;
  private final double[] along;
  private final boolean spread;

  /**
   * @param sum of effects, or tau alone, as numbers to multiply them by
   * @param spread whether tau is estimated
   */
  Profile(ExactFit fit, double[] sum, boolean spread) {
    this.fit = fit;
    this.sum = sum.clone();
    this.spread = spread;
    int tau = sum.length - 1;
    int most = 0;
    for (int i = 0; i < sum.length; i++) {
      most = Math.abs(sum[i]) > Math.abs(sum[most]) ? i : most;
    }
    this.solved = most;
    List<double[]> free = new ArrayList<>();
    for (int i = 0; i < sum.length; i++) {
      if (i != solved && (i != tau || spread)) {
        double[] direction = new double[sum.length];
        direction[i] = 1;
        direction[solved] -= sum[i] / sum[solved];
        free.add(direction);
      }
    }
    this.others = free.toArray(double[][]::new);
    this.along = along();
  }

  /** How the numbers go along when the sum goes by one, to begin with. */
  private double[] along() {
    double[] along = new double[sum.length];
    double variance = fit.variance(sum);
    if (variance > 0) {
      double[][] covariance = fit.covariance();
      for (int i = 0; i < covariance.length; i++) {
        for (int j = 0; j < covariance.length; j++) {
          along[i] += covariance[i][j] * sum[j] / variance;
        }
      }
    } else {
      along[solved] = 1 / sum[solved];
    }
    return along;
  }

  /**
   * The distance from the top in normal deviates, how steeply it grows, whether it can be known.
   */
  private record At(double root, double rise, boolean known) {}

  private At at(double value) {
    Work.check();
    double way = value - fit.estimate(sum);
    double[] start = fit.top().point().clone();
    for (int i = 0; i < start.length; i++) {
      start[i] += way * along[i];
    }
    int tau = start.length - 1;
    if (solved != tau) {
      start[tau] = spread ? Math.max(0, start[tau]) : 0;
    }
    // Exactly on the value, whatever was cut off above.
    start[solved] += (value - ExactFit.value(start, sum)) / sum[solved];
    Climb climb = new Climb(fit.likelihood());
    Climb.Top best = climb.from(start, others);
    if (spread && solved != tau && best.tau() < SETTLED && best.local().bends[tau][tau] > 0) {
      double[] again = best.point().clone();
      again[tau] = START;
      best = climb.from(again, others);
    }
    double root = Math.sqrt(Math.max(0, 2 * (fit.top().value() - best.value())));
    double slope = Math.signum(way) * best.local().slopes[solved] / sum[solved];
    return new At(root, -slope / root, solved == tau || !best.isTooWide());
  }

  /** How far the profile at a value lies below the top, in normal deviates. */
  double root(double value) {
    return at(value).root();
  }

  /**
   * The limit on one side; empty where the profile does not fall so far.
   *
   * @param way 1 above the top, -1 below it
   * @param point the normal point, above 0
   * @param error a first guess of a standard error, above 0
   */
  OptionalDouble limit(int way, double point, double error) {
    double best = fit.estimate(sum);
    double near = 0;
    double farthest = solved == sum.length - 1 ? Climb.WIDEST - best : FARTHEST;
    double far = farthest;
    double distance = Math.min(point * error, farthest);
    for (int step = 0; step < MOST_STEPS; step++) {
      At now = at(best + way * distance);
      double missing = point - now.root();
      if (!now.known()) {
        return OptionalDouble.empty();
      }
      if (Math.abs(missing) < SETTLED) {
        return OptionalDouble.of(best + way * distance);
      }
      if (missing > 0) {
        near = distance;
      } else {
        far = distance;
      }
      if (near >= farthest) {
        return OptionalDouble.empty();
      }
      double next = distance + missing / now.rise();
      if (!(next > near && next < Math.min(far, 3 * distance))) {
        next = far < farthest ? (near + far) / 2 : Math.min(farthest, 2 * distance);
      }
      distance = next;
    }
    return far - near < SETTLED * far
        ? OptionalDouble.of(best + way * distance)
        : OptionalDouble.empty();
  }
}
