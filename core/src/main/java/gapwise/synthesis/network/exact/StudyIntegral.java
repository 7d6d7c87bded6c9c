package gapwise.synthesis.network.exact;

import gapwise.numeric.CholeskyFactor;
import gapwise.numeric.GaussHermite;
import gapwise.numeric.SymmetricMatrix;
import gapwise.synthesis.network.exact.GivenTotal.Moments;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;

/**
 * The integral over the differences of one study, u, at one place: the sum over Gauss-Hermite
 * points about its mode, with the derivatives of its logarithm. Used once.
 */
final class StudyIntegral {
  /** Where the mode is near enough: a share of a standard deviation. */
  private static final double SETTLED = 1e-10;

  private static final int MOST_STEPS = 60;

  private final GivenTotal counts;
  private final double[][] directions;
  private final int points;
  private final double[] eta;
  private final double tau;
  private final int arms;
  private final int m;
  private final double[] own;
  private final double[] theta;

  /** Sums over points of weight times: 1, slopes, second derivatives with squares of slopes. */
  private double mass;

  private final LocalLikelihood sums;

  /**
   * @param directions B, a row for each arm
   * @param points a dimension
   * @param eta log odds of the arms in the network
   * @param tau above 0
   */
  StudyIntegral(GivenTotal counts, double[][] directions, int points, double[] eta, double tau) {
    this.counts = counts;
    this.directions = directions;
    this.points = points;
    this.eta = eta;
    this.tau = tau;
    this.arms = directions.length;
    this.m = arms - 1;
    this.own = new double[arms];
    this.theta = new double[arms];
    this.sums = new LocalLikelihood(arms + 1);
  }

  LocalLikelihood sum() {
    double[] mode = mode();
    Moments there = moments(mode);
    double top = there.value - square(mode) / 2;
    SymmetricMatrix apart = SymmetricMatrix.of(new Array2DRowRealMatrix(curvature(there), false));
    double[][] axes = new double[m][m];
    double logVolume = 0;
    for (int l = 0; l < m; l++) {
      double[] direction = apart.direction(l).toArray();
      for (int k = 0; k < m; k++) {
        axes[l][k] = direction[k] / Math.sqrt(apart.value(l));
      }
      logVolume -= Math.log(apart.value(l)) / 2;
    }
    overPoints(mode, axes, top);
    return result(top + logVolume);
  }

  private void overPoints(double[] mode, double[][] axes, double top) {
    GaussHermite rule = GaussHermite.of(points);
    int[] place = new int[m];
    double[] u = new double[m];
    while (true) {
      double logWeight = -top;
      System.arraycopy(mode, 0, u, 0, m);
      for (int l = 0; l < m; l++) {
        logWeight += rule.logScaledWeight(place[l]);
        for (int k = 0; k < m; k++) {
          u[k] += rule.node(place[l]) * axes[l][k];
        }
      }
      Moments moments = moments(u);
      add(Math.exp(logWeight + moments.value - square(u) / 2), moments);
      int l = 0;
      while (l < m && ++place[l] == rule.points()) {
        place[l++] = 0;
      }
      if (l == m) {
        return;
      }
    }
  }

  /** The moments at u, whose B u is left in {@link #own}. */
  private Moments moments(double[] u) {
    for (int j = 0; j < arms; j++) {
      own[j] = 0;
      for (int l = 0; l < m; l++) {
        own[j] += directions[j][l] * u[l];
      }
      theta[j] = eta[j] + tau * own[j];
    }
    return counts.at(theta);
  }

  private double[][] curvature(Moments moments) {
    double[][] curvature = StudyMarginal.along(moments.covariance, directions);
    for (int l = 0; l < m; l++) {
      for (int k = 0; k < m; k++) {
        curvature[l][k] *= tau * tau;
      }
      curvature[l][l] += 1;
    }
    return curvature;
  }

  /** Newton's method on a concave function, cut back where it oversteps. */
  private double[] mode() {
    double[] u = new double[m];
    Moments here = moments(u);
    double value = here.value;
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] slopes = new double[m];
      for (int l = 0; l < m; l++) {
        slopes[l] = -u[l];
        for (int j = 0; j < arms; j++) {
          slopes[l] += tau * directions[j][l] * here.residuals[j];
        }
      }
      double[] way = CholeskyFactor.of(curvature(here)).solve(slopes);
      double promise = 0;
      for (int l = 0; l < m; l++) {
        promise += way[l] * slopes[l];
      }
      if (promise < SETTLED) {
        return u;
      }
      double share = 1;
      while (true) {
        double[] next = u.clone();
        for (int l = 0; l < m; l++) {
          next[l] += share * way[l];
        }
        Moments there = moments(next);
        double risen = there.value - square(next) / 2;
        if (risen > value) {
          u = next;
          here = there;
          value = risen;
          break;
        }
        share /= 2;
        if (share < SETTLED) {
          return u;
        }
      }
    }
    return u;
  }

  private void add(double weight, Moments moments) {
    mass += weight;
    double across = 0;
    double held = 0;
    for (int i = 0; i < arms; i++) {
      double row = 0;
      for (int j = 0; j < arms; j++) {
        row += moments.covariance[i][j] * own[j];
      }
      across += moments.residuals[i] * own[i];
      held += own[i] * row;
      sums.bends[i][arms] -= weight * row;
    }
    for (int i = 0; i < arms; i++) {
      double slope = weight * moments.residuals[i];
      sums.slopes[i] += slope;
      sums.bends[i][arms] += slope * across;
      for (int j = 0; j <= i; j++) {
        sums.bends[i][j] += slope * moments.residuals[j] - weight * moments.covariance[i][j];
      }
    }
    sums.slopes[arms] += weight * across;
    sums.bends[arms][arms] += weight * (across * across - held);
  }

  private LocalLikelihood result(double base) {
    LocalLikelihood local = new LocalLikelihood(arms + 1);
    local.value = base + Math.log(mass);
    for (int i = 0; i <= arms; i++) {
      local.slopes[i] = sums.slopes[i] / mass;
    }
    for (int i = 0; i <= arms; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = i == arms && j < arms ? sums.bends[j][arms] : sums.bends[i][j];
        local.bends[i][j] = sum / mass - local.slopes[i] * local.slopes[j];
        local.bends[j][i] = local.bends[i][j];
      }
    }
    return local;
  }

  private double square(double[] u) {
    double sum = 0;
    for (double one : u) {
      sum += one * one;
    }
    return sum;
  }
}
