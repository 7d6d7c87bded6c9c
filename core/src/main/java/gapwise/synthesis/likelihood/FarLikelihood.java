package gapwise.synthesis.likelihood;

import gapwise.numeric.CholeskyFactor;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What the log likelihood tends to as tau and all means grow together, where every study has no
 * event or only events: the best sum of log Phi(s x'g) over g, s being 1 for only events and -1 for
 * none. Concave in g, found by Newton's method.
 */
final class FarLikelihood {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final double SETTLED = 1e-12;
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 40;

  private FarLikelihood() {}

  /** The limit; minus infinity where some study lies at no limit, whose likelihood falls. */
  static double of(StudyLikelihoods studies, LinearMeans means) {
    int[] signs = new int[studies.size()];
    for (int i = 0; i < signs.length; i++) {
      signs[i] = Separation.sign(studies.pull(i));
      if (signs[i] == 0) {
        return Double.NEGATIVE_INFINITY;
      }
    }
    double[] at = new double[means.columns()];
    double value = value(means, signs, at);
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] slopes = new double[at.length];
      double[][] bends = new double[at.length][at.length];
      derivatives(means, signs, at, slopes, bends);
      double[] way = CholeskyFactor.of(bends).solve(slopes);
      double promise = 0;
      for (int j = 0; j < way.length; j++) {
        promise += way[j] * slopes[j];
      }
      if (promise < SETTLED) {
        return value;
      }
      double share = 1;
      double[] next = moved(at, way, share);
      for (int cut = 0; cut < MOST_HALVINGS && !(value(means, signs, next) > value); cut++) {
        share /= 2;
        next = moved(at, way, share);
      }
      if (!(value(means, signs, next) > value)) {
        return value;
      }
      at = next;
      value = value(means, signs, at);
    }
    return value;
  }

  private static double[] moved(double[] at, double[] way, double share) {
    double[] next = at.clone();
    for (int j = 0; j < next.length; j++) {
      next[j] += share * way[j];
    }
    return next;
  }

  private static double value(LinearMeans means, int[] signs, double[] at) {
    double sum = 0;
    for (int i = 0; i < signs.length; i++) {
      sum += Math.log(NORMAL.cumulativeProbability(signs[i] * means.mean(i, at)));
    }
    return sum;
  }

  /** First derivatives, and the second ones with their sign turned. */
  private static void derivatives(
      LinearMeans means, int[] signs, double[] at, double[] slopes, double[][] bends) {
    for (int i = 0; i < signs.length; i++) {
      double mean = signs[i] * means.mean(i, at);
      double ratio = NORMAL.density(mean) / NORMAL.cumulativeProbability(mean);
      double bend = ratio * (mean + ratio);
      for (int a = 0; a < slopes.length; a++) {
        slopes[a] += signs[i] * ratio * means.value(i, a);
        for (int b = 0; b <= a; b++) {
          bends[a][b] += bend * means.value(i, a) * means.value(i, b);
        }
      }
    }
  }
}
