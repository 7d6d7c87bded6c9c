package gapwise.synthesis.network.exact;

import gapwise.synthesis.network.exact.GivenTotal.Moments;

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
    int points = LADDERS[contrasts() - 1][rung];
    return tau == 0
        ? withoutSpread(eta)
        : new StudyIntegral(counts, directions, points, eta, tau).sum();
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
  static double[][] along(double[][] matrix, double[][] b) {
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
}
