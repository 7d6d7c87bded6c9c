package gapwise.synthesis.likelihood;

import gapwise.budget.Work;

/**
 * The likelihood along one sum of the coefficients of a regression, everything else and tau at
 * their best for each of its values (profile likelihood): its signed root, sign times root(2 (top -
 * profile)), which is near standard normal where the sum is the true one (Barndorff-Nielsen and
 * Cox, Inference and Asymptotics, 1994, section 3.5; from memory).
 */
final class RegressionProfile {
  private static final int MOST_STEPS = 60;

  private static final double SETTLED = 1e-8;

  /**
   * How far the mean of any study may go, on the logit or log scale: odds of e^60 are as good as
   * none to anyone who reads them.
   */
  private static final double FARTHEST = 60;

  /** So near the top, in standard errors, that the likelihood is a parabola to all digits. */
  private static final double NEAR = 1e-3;

  private final RegressionSearch search;
  private final LinearMeans means;
  private final RegressionSearch.Top top;
  private final double[] direction;
  private final double[] moves;

  /** How the multiples go along when the sum goes one. */
  private final double[] along;

  private final double farthest;
  private final double best;
  private final double error;

  /**
   * @param direction of length 1, among multiples of the columns
   */
  RegressionProfile(
      RegressionSearch search, LinearMeans means, RegressionSearch.Top top, double[] direction) {
    this.search = search;
    this.means = means;
    this.top = top;
    this.direction = direction;
    int p = direction.length;
    along = new double[p];
    double[][] covariance = top.place().covariance();
    double variance = 0;
    double at = 0;
    for (int a = 0; a < p; a++) {
      for (int b = 0; b < p; b++) {
        along[a] += covariance[a][b] * direction[b];
      }
      variance += direction[a] * along[a];
      at += direction[a] * top.place().times[a];
    }
    for (int a = 0; a < p; a++) {
      along[a] /= variance;
    }
    best = at;
    error = Math.sqrt(variance);
    moves = new double[means.studies()];
    double most = 0;
    for (int i = 0; i < moves.length; i++) {
      for (int j = 0; j < p; j++) {
        moves[i] += means.value(i, j) * direction[j];
      }
      most = Math.max(most, Math.abs(moves[i]));
    }
    farthest = FARTHEST / most / error;
  }

  /** Where the top has the sum. */
  double best() {
    return best;
  }

  /** Its standard error by the information there. */
  double error() {
    return error;
  }

  /** The signed root at a value, above 0 where the value is above the top's. */
  double root(double value) {
    double distance = (value - best) / error;
    return Math.abs(distance) < NEAR ? distance : at(value).root();
  }

  /** A value with its signed root, and how steeply that rises there. */
  private record At(double root, double rise) {}

  private At at(double value) {
    Work.check();
    LinearMeans held = means.held(direction, value);
    double[][] left = LinearMeans.atRightAngles(direction);
    double[] times = new double[left.length];
    for (int c = 0; c < times.length; c++) {
      for (int j = 0; j < direction.length; j++) {
        times[c] += left[c][j] * (top.place().times[j] + (value - best) * along[j]);
      }
    }
    RegressionSearch.Top profile = search.top(held, times, top.place().tau);
    double sign = Math.signum(value - best);
    double root = sign * Math.sqrt(Math.max(0, 2 * (top.value() - profile.value())));
    return new At(root, -profile.place().slopeBy(moves) / root);
  }

  /**
   * A limit of the sum.
   *
   * @param reached whether the profile falls so far; else the value is the farthest looked at, and
   *     the limit lies beyond
   */
  record Limit(double value, boolean reached) {}

  /**
   * The value whose signed root is so large, by Newton's method within what is known to be below
   * and above.
   *
   * @param root other than 0
   */
  Limit limit(double root) {
    double way = Math.signum(root);
    double near = 0;
    double far = Double.POSITIVE_INFINITY;
    double distance = Math.min(Math.abs(root), farthest);
    for (int i = 0; i < MOST_STEPS; i++) {
      double value = best + way * distance * error;
      At now = at(value);
      double missing = Math.abs(root) - way * now.root();
      if (Math.abs(missing) < SETTLED) {
        return new Limit(value, true);
      }
      if (missing > 0) {
        near = distance;
      } else {
        far = distance;
      }
      if (near >= farthest) {
        return new Limit(value, false);
      }
      double next = distance + missing / (now.rise() * error);
      if (!(next > near && next < Math.min(far, 2 * distance))) {
        next = far < Double.POSITIVE_INFINITY ? (near + far) / 2 : 2 * distance;
      }
      distance = Math.min(next, farthest);
    }
    return new Limit(best + way * distance * error, far - near < NEAR * distance);
  }
}
