package gapwise.synthesis.likelihood;

import static gapwise.synthesis.likelihood.StudyLikelihoods.G;
import static gapwise.synthesis.likelihood.StudyLikelihoods.GG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.T;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TT;
import static gapwise.synthesis.likelihood.StudyLikelihoods.VALUE;

/**
 * The log likelihood of one study with its true value mean + tau u integrated out over a standard
 * normal u, and its derivatives by mean, tau and intercept, in this order. Not for use by several
 * threads at once.
 */
abstract class TrueValueIntegral {
  private static final int MOST_STEPS = 300;

  private static final double SETTLED = 1e-7;

  /** Log likelihood, then its first derivatives, then the second ones row by row. */
  double value;

  final double[] gradient = new double[3];
  final double[][] hessian = new double[3][3];

  /** Place of the mode of the integrand, in units of u. */
  double mode;

  final StudyLikelihoods studies;

  /** Derivatives of the study's log likelihood at the last true value asked for. */
  final double[] d = new double[StudyLikelihoods.LENGTH];

  TrueValueIntegral(StudyLikelihoods studies) {
    this.studies = studies;
  }

  /**
   * Works out value and derivatives.
   *
   * @param tau at least 0; at 0 the derivatives by it are those from above
   * @param from where the search for the mode starts
   */
  abstract void at(int study, double mean, double tau, double intercept, double from);

  /** The same at a tau of 0. */
  final void withoutSpread(int study, double mean, double intercept) {
    studies.second(study, mean, intercept, d);
    mode = 0;
    value = d[VALUE];
    gradient[0] = d[T];
    gradient[1] = 0;
    gradient[2] = d[G];
    hessian[0][0] = d[TT];
    hessian[1][1] = d[T] * d[T] + d[TT];
    hessian[2][2] = d[GG];
    both(hessian, 0, 1, 0);
    both(hessian, 0, 2, d[TG]);
    both(hessian, 1, 2, 0);
  }

  /** The zero of h_u(u) = tau l'(mean + tau u) - u, which falls; Newton within a bracket. */
  final double findMode(int study, double mean, double tau, double intercept, double from) {
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    double u = from;
    double lastStep = Double.POSITIVE_INFINITY;
    for (int i = 0; i < MOST_STEPS; i++) {
      studies.slopes(study, mean + tau * u, intercept, d);
      double slope = tau * d[T] - u;
      if (slope > 0) {
        low = u;
      } else {
        high = u;
      }
      double bend = 1 - tau * tau * d[TT];
      double step = slope / bend;
      double next = u + step;
      // Where rates leave the range of numbers the bend does first, and a step is none.
      boolean beyond = !Double.isFinite(bend);
      if (!beyond && Math.abs(step) <= SETTLED * (1 + Math.abs(u))) {
        return next; // what is left is of the order of the square of this step
      }
      boolean slow = i > 4 && Math.abs(step) > lastStep / 2;
      if (!(next >= low && next <= high) || slow || beyond) {
        next = between(low, high, u);
      }
      lastStep = Math.abs(next - u);
      u = next;
    }
    return u;
  }

  private static double between(double low, double high, double u) {
    if (low == Double.NEGATIVE_INFINITY) {
      return high - 1 - Math.abs(u);
    }
    return high == Double.POSITIVE_INFINITY ? low + 1 + Math.abs(u) : low + (high - low) / 2;
  }

  static void both(double[][] matrix, int x, int y, double entry) {
    matrix[x][y] = entry;
    matrix[y][x] = entry;
  }
}
