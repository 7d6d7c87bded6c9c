package gapwise.synthesis.likelihood;

import static gapwise.synthesis.likelihood.StudyLikelihoods.T;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TGG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TT;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TTG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TTGG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TTT;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TTTG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TTTT;

/**
 * How the mode m of a study's integrand and its scale s = D^-1/2 move with mean, tau and intercept,
 * to the second order: from differentiating h_u(m) = 0 and D = -h_uu(m), as said in {@link
 * StudyIntegral}.
 */
final class ModeMoves {
  /** First derivatives of the mode. */
  final double[] mode = new double[3];

  /** First derivatives of log s. */
  final double[] scale = new double[3];

  final double[][] modeBends = new double[3][3];

  /** Second derivatives of s. */
  final double[][] scaleBends = new double[3][3];

  /** Second derivatives of log s. */
  final double[][] logScaleBends = new double[3][3];

  private final int parameters;
  private final double[] first = new double[3];
  private final double[] mixed = new double[3];
  private final double[] curved = new double[3];
  private final double[] bent = new double[3];
  private double width;

  ModeMoves(int parameters) {
    this.parameters = parameters;
  }

  /** The scale s. */
  double width() {
    return width;
  }

  /**
   * Works out how they move.
   *
   * @param d all derivatives of the study's log likelihood at the mode
   * @param u the mode
   * @param tau above 0
   */
  void at(double[] d, double u, double tau) {
    double tau2 = tau * tau;
    double tau3 = tau2 * tau;
    double spread = 1 - tau2 * d[TT];
    double third = tau3 * d[TTT];
    first[0] = tau * d[TT];
    first[1] = d[T] + tau * u * d[TT];
    first[2] = tau * d[TG];
    curved[0] = tau2 * d[TTT];
    curved[1] = 2 * tau * d[TT] + tau2 * u * d[TTT];
    curved[2] = tau2 * d[TTG];
    bent[0] = tau3 * d[TTTT];
    bent[1] = 3 * tau2 * d[TTT] + tau3 * u * d[TTTT];
    bent[2] = tau3 * d[TTTG];
    both(modeBends, 0, 0, tau * d[TTT]);
    both(modeBends, 0, 1, d[TT] + tau * u * d[TTT]);
    both(modeBends, 1, 1, 2 * u * d[TT] + tau * u * u * d[TTT]);
    both(modeBends, 0, 2, tau * d[TTG]);
    both(modeBends, 1, 2, d[TG] + tau * u * d[TTG]);
    both(modeBends, 2, 2, tau * d[TGG]);
    both(scaleBends, 0, 0, tau2 * d[TTTT]);
    both(scaleBends, 0, 1, 2 * tau * d[TTT] + tau2 * u * d[TTTT]);
    both(scaleBends, 1, 1, 2 * d[TT] + 4 * tau * u * d[TTT] + tau2 * u * u * d[TTTT]);
    both(scaleBends, 0, 2, tau2 * d[TTTG]);
    both(scaleBends, 1, 2, 2 * tau * d[TTG] + tau2 * u * d[TTTG]);
    both(scaleBends, 2, 2, tau2 * d[TTGG]);
    width = 1 / Math.sqrt(spread);
    for (int x = 0; x < parameters; x++) {
      mode[x] = first[x] / spread;
      mixed[x] = -(third * mode[x] + curved[x]); // derivative of the spread D
      scale[x] = -mixed[x] / spread / 2;
    }
    double fourth = tau2 * tau2 * d[TTTT];
    for (int x = 0; x < parameters; x++) {
      for (int y = 0; y <= x; y++) {
        double mx = mode[x];
        double my = mode[y];
        double bend =
            (third * mx * my + curved[x] * my + curved[y] * mx + modeBends[x][y]) / spread;
        double spreadBend =
            -(fourth * mx * my + bent[x] * my + bent[y] * mx + scaleBends[x][y] + third * bend);
        double logBend = -(spreadBend / spread - mixed[x] / spread * (mixed[y] / spread)) / 2;
        both(modeBends, x, y, bend);
        both(logScaleBends, x, y, logBend);
        both(scaleBends, x, y, width * (logBend + scale[x] * scale[y]));
      }
    }
  }

  private static void both(double[][] matrix, int x, int y, double entry) {
    matrix[x][y] = entry;
    matrix[y][x] = entry;
  }
}
