package gapwise.synthesis.network.exact;

import gapwise.numeric.CholeskyFactor;
import gapwise.numeric.GaussHermite;
import gapwise.numeric.SymmetricMatrix;
import gapwise.synthesis.network.exact.GivenTotal.Moments;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;

/**
 * The likelihood of one study whose true log odds are those of the network, eta, and differences of
 * its own: tau z_j / root 2 with a standard normal z_j for each arm, so that every contrast has
 * variance tau^2 and two contrasts that share an arm covariance tau^2 / 2. Only differences count,
 * so of the arms + 1 numbers z one direction is left out: theta = eta + tau B u, with u standard
 * normal in as many dimensions as there are contrasts.
 *
 * <p>The integral over u is a Gauss-Hermite product about the study's own mode, along the main axes
 * of the curvature there (Liu and Pierce, Biometrika 1994;81:624, in one dimension). Derivatives of
 * its logarithm are means over the same points: the slope is the mean slope, the second derivative
 * the mean second derivative and the variance of slopes (Louis, J R Stat Soc B 1982;44:226).
 */
final class StudyMarginal {
  /** Points a dimension to choose from, by the number of dimensions; products stay below 60,000. */
  private static final int[][] LADDERS = {
    {15, 25, 41, 67, 111, 185},
    {7, 11, 17, 27, 43, 69},
    {5, 9, 13, 19, 27, 37},
    {5, 7, 9, 13},
    {3, 5, 7, 9}
  };

  /** Most contrasts of a study that can be integrated over. */
  static final int MOST_CONTRASTS = LADDERS.length;

  /** Where the mode is near enough: a share of a standard deviation. */
  private static final double SETTLED = 1e-10;

  private static final int MOST_STEPS = 60;

  private final GivenTotal counts;
  private final double[][] directions;
  private final int rung;

  private StudyMarginal(GivenTotal counts, double[][] directions, int rung) {
    this.counts = counts;
    this.directions = directions;
    this.rung = rung;
  }

  /** The likelihood of a study that tells something, of at most {@link #MOST_CONTRASTS}. */
  static StudyMarginal of(CountedStudy study) {
    return new StudyMarginal(new GivenTotal(study.arms()), directions(study.arms().size()), 0);
  }

  /** B: columns at right angles to each other and to 1, of squared length one half (Helmert). */
  private static double[][] directions(int arms) {
    double[][] b = new double[arms][arms - 1];
    for (int l = 1; l < arms; l++) {
      double each = Math.sqrt(0.5 / (l * (l + 1.0)));
      for (int j = 0; j < l; j++) {
        b[j][l - 1] = each;
      }
      b[l][l - 1] = -l * each;
    }
    return b;
  }

  int arms() {
    return counts.arms();
  }

  private int contrasts() {
    return counts.arms() - 1;
  }

  /** Points of the integral. */
  int points() {
    int points = 1;
    for (int l = 0; l < contrasts(); l++) {
      points *= LADDERS[contrasts() - 1][rung];
    }
    return points;
  }

  /** Whether there are more points to take. */
  boolean canBeFiner() {
    return rung + 1 < LADDERS[contrasts() - 1].length;
  }

  /** The same with more points. */
  StudyMarginal finer() {
    return new StudyMarginal(counts, directions, rung + 1);
  }

  /** What the study's contrasts are known by at these log odds, on average. */
  double precision(double[] eta) {
    double sum = 0;
    double[][] along = along(counts.at(eta).covariance, directions);
    for (int l = 0; l < along.length; l++) {
      sum += along[l][l];
    }
    return sum / along.length;
  }

  /**
   * The log likelihood with all constants, by the log odds of each arm and by tau.
   *
   * @param tau 0 or above
   */
  LocalLikelihood at(double[] eta, double tau) {
    return tau == 0 ? withoutSpread(eta) : new Integral(eta, tau).sum();
  }

  /** At tau 0 the slope by tau is 0, and the second derivative is a mean over u in closed form. */
  private LocalLikelihood withoutSpread(double[] eta) {
    Moments moments = counts.at(eta);
    int arms = arms();
    LocalLikelihood local = new LocalLikelihood(arms + 1);
    local.value = moments.value;
    double[][] inner = new double[arms][arms];
    for (int i = 0; i < arms; i++) {
      local.slopes[i] = moments.residuals[i];
      for (int j = 0; j < arms; j++) {
        local.bends[i][j] = -moments.covariance[i][j];
        inner[i][j] = moments.residuals[i] * moments.residuals[j] - moments.covariance[i][j];
      }
    }
    double[][] along = along(inner, directions);
    for (int l = 0; l < along.length; l++) {
      local.bends[arms][arms] += along[l][l];
    }
    return local;
  }

  /** B'MB. */
  private static double[][] along(double[][] matrix, double[][] b) {
    int arms = b.length;
    int m = b[0].length;
    double[][] along = new double[m][m];
    for (int l = 0; l < m; l++) {
      for (int i = 0; i < arms; i++) {
        double sum = 0;
        for (int j = 0; j < arms; j++) {
          sum += matrix[i][j] * b[j][l];
        }
        for (int k = 0; k < m; k++) {
          along[k][l] += b[i][k] * sum;
        }
      }
    }
    return along;
  }

  /** One integral over u. */
  private final class Integral {
    private final double[] eta;
    private final double tau;
    private final int arms = arms();
    private final int m = contrasts();
    private final double[] own = new double[arms];
    private final double[] theta = new double[arms];

    /** Sums over points of weight times: 1, slopes, second derivatives with squares of slopes. */
    private double mass;

    private final LocalLikelihood sums = new LocalLikelihood(arms + 1);

    Integral(double[] eta, double tau) {
      this.eta = eta;
      this.tau = tau;
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
      GaussHermite rule = GaussHermite.of(LADDERS[m - 1][rung]);
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
      double[][] curvature = along(moments.covariance, directions);
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
}
