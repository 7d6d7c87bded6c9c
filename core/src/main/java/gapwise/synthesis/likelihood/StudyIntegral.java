package gapwise.synthesis.likelihood;

import static gapwise.synthesis.likelihood.StudyLikelihoods.G;
import static gapwise.synthesis.likelihood.StudyLikelihoods.GG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.T;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TG;
import static gapwise.synthesis.likelihood.StudyLikelihoods.TT;
import static gapwise.synthesis.likelihood.StudyLikelihoods.VALUE;

import gapwise.budget.Work;
import gapwise.numeric.GaussHermite;

/**
 * The log likelihood of one study with its true value mean + tau u integrated out over a standard
 * normal u, by Gauss-Hermite quadrature centred at the mode of the integrand and scaled by its
 * curvature there (Pinheiro and Bates, J Comput Graph Stat 1995;4:12; Liu and Pierce, Biometrika
 * 1994;81:624), with its exact first and second derivatives by mean, tau and intercept.
 *
 * <p>With h(u) = l(mean + tau u) - u^2/2, mode m and scale s = D^-1/2, D = -h''(m), the value is
 * log s + log sum exp(c_j + h(m + s z_j)). Derivatives take along how m and s move: m_x = h_ux/D
 * and so on, from differentiating h_u(m) = 0. They are therefore those of the sum that is computed,
 * not of the integral it stands for, so that few points give a consistent fit too. Not for use by
 * several threads at once.
 */
final class StudyIntegral extends TrueValueIntegral {
  /** Nodes that add less than this share are passed over, since their derivatives can overflow. */
  private static final double LEAST_SHARE = 1e-200;

  private final int parameters;
  private final double[] nodes;
  private final double[] logScaled;
  private final ModeMoves moves;
  private final double[] first = new double[3];
  private final double[] mixed = new double[3];
  private final double[] curved = new double[3];
  private final double[] bent = new double[3];

  StudyIntegral(StudyLikelihoods studies, GaussHermite rule) {
    super(studies);
    parameters = studies.hasIntercepts() ? 3 : 2;
    moves = new ModeMoves(parameters);
    nodes = new double[rule.points()];
    logScaled = new double[rule.points()];
    for (int i = 0; i < nodes.length; i++) {
      nodes[i] = rule.node(i);
      logScaled[i] = rule.logScaledWeight(i);
    }
  }

  @Override
  void at(int study, double mean, double tau, double intercept, double from) {
    Work.check();
    if (tau == 0) {
      withoutSpread(study, mean, intercept);
      return;
    }
    mode = findMode(study, mean, tau, intercept, from);
    studies.all(study, mean + tau * mode, intercept, d);
    moves.at(d, mode, tau);
    if (parameters == 2) {
      sumOfTwo(study, mean, tau);
    } else {
      sum(study, mean, tau, intercept);
    }
  }

  private void sum(int study, double mean, double tau, double intercept) {
    double scale = moves.width();
    double top = d[VALUE] - mode * mode / 2;
    double total = 0;
    double[] slopes = gradient;
    java.util.Arrays.fill(slopes, 0);
    for (double[] row : hessian) {
      java.util.Arrays.fill(row, 0);
    }
    for (int j = 0; j < nodes.length; j++) {
      double z = nodes[j];
      double u = mode + scale * z;
      studies.second(study, mean + tau * u, intercept, d);
      double share = Math.exp(logScaled[j] + d[VALUE] - u * u / 2 - top);
      if (!(share > LEAST_SHARE)) {
        continue;
      }
      total += share;
      add(share, z, u, tau, scale);
    }
    value = top + Math.log(scale * total);
    for (int x = 0; x < parameters; x++) {
      slopes[x] /= total;
    }
    for (int x = 0; x < parameters; x++) {
      for (int y = 0; y <= x; y++) {
        both(
            hessian,
            x,
            y,
            hessian[x][y] / total - slopes[x] * slopes[y] + moves.logScaleBends[x][y]);
      }
    }
    for (int x = 0; x < parameters; x++) {
      slopes[x] += moves.scale[x];
    }
  }

  /** As the other, for mean and tau alone, whose sums stay out of arrays in the loop. */
  private void sumOfTwo(int study, double mean, double tau) {
    double scale = moves.width();
    double top = d[VALUE] - mode * mode / 2;
    double mode0 = moves.mode[0];
    double mode1 = moves.mode[1];
    double scale0 = scale * moves.scale[0];
    double scale1 = scale * moves.scale[1];
    double total = 0;
    double slope0 = 0;
    double slope1 = 0;
    double bend00 = 0;
    double bend01 = 0;
    double bend11 = 0;
    for (int j = 0; j < nodes.length; j++) {
      double z = nodes[j];
      double u = mode + scale * z;
      studies.second(study, mean + tau * u, 0, d);
      double share = Math.exp(logScaled[j] + d[VALUE] - u * u / 2 - top);
      if (!(share > LEAST_SHARE)) {
        continue;
      }
      // how the node and the true value there move
      double u0 = mode0 + scale0 * z;
      double u1 = mode1 + scale1 * z;
      double theta0 = 1 + tau * u0;
      double theta1 = u + tau * u1;
      double l = d[T];
      double ll = d[TT];
      double h = tau * l - u;
      double first0 = l * theta0 - u * u0;
      double first1 = l * theta1 - u * u1;
      total += share;
      slope0 += share * first0;
      slope1 += share * first1;
      double moved00 = moves.modeBends[0][0] + moves.scaleBends[0][0] * z;
      double moved01 = moves.modeBends[0][1] + moves.scaleBends[0][1] * z;
      double moved11 = moves.modeBends[1][1] + moves.scaleBends[1][1] * z;
      bend00 += share * (first0 * first0 + ll * theta0 * theta0 - u0 * u0 + h * moved00);
      bend01 += share * (first0 * first1 + ll * theta0 * theta1 - u0 * u1 + h * moved01 + l * u0);
      bend11 +=
          share * (first1 * first1 + ll * theta1 * theta1 - u1 * u1 + h * moved11 + 2 * l * u1);
    }
    value = top + Math.log(scale * total);
    slope0 /= total;
    slope1 /= total;
    both(hessian, 0, 0, bend00 / total - slope0 * slope0 + moves.logScaleBends[0][0]);
    both(hessian, 1, 0, bend01 / total - slope0 * slope1 + moves.logScaleBends[1][0]);
    both(hessian, 1, 1, bend11 / total - slope1 * slope1 + moves.logScaleBends[1][1]);
    gradient[0] = slope0 + moves.scale[0];
    gradient[1] = slope1 + moves.scale[1];
  }

  /** Adds one node: its share times slopes, and times bends plus products of slopes. */
  private void add(double share, double z, double u, double tau, double scale) {
    double hu = tau * d[T] - u;
    double huu = tau * tau * d[TT] - 1;
    first[0] = d[T];
    first[1] = u * d[T];
    mixed[0] = tau * d[TT];
    mixed[1] = d[T] + tau * u * d[TT];
    if (parameters == 3) {
      first[2] = d[G];
      mixed[2] = tau * d[TG];
    }
    for (int x = 0; x < parameters; x++) {
      curved[x] = moves.mode[x] + scale * moves.scale[x] * z; // how the node moves
      bent[x] = first[x] + hu * curved[x];
      gradient[x] += share * bent[x];
    }
    for (int x = 0; x < parameters; x++) {
      for (int y = 0; y <= x; y++) {
        double moved = moves.modeBends[x][y] + moves.scaleBends[x][y] * z;
        hessian[x][y] +=
            share
                * (direct(x, y, u)
                    + mixed[x] * curved[y]
                    + mixed[y] * curved[x]
                    + huu * curved[x] * curved[y]
                    + hu * moved
                    + bent[x] * bent[y]);
      }
    }
  }

  /** Second derivative of h by two parameters with u held; x is not below y. */
  private double direct(int x, int y, double u) {
    if (x == 2) {
      return y == 2 ? d[GG] : y == 1 ? u * d[TG] : d[TG];
    }
    return x == 0 ? d[TT] : y == 0 ? u * d[TT] : u * u * d[TT];
  }
}
