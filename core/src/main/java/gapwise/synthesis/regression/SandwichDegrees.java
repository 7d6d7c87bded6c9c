package gapwise.synthesis.regression;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Degrees of freedom of a bias-reduced sandwich: those of the multiple of a chi-squared (for
 * several coefficients a Wishart matrix) that has the mean and variance the sandwich would have if
 * the working covariance were right.
 *
 * <p>With P_jk the covariance, under it, of what clusters j and k add to the error of a
 * coefficient, a single variance has (sum P_jj)^2 / sum P_jk^2 (Satterthwaite, Biometrics
 * 1946;2:110; Bell and McCaffrey, Surv Methodol 2002;28:169). P_jk is U_j'F U_j for j = k less
 * (X_j'U_j)'M(X_k'U_k).
 */
final class SandwichDegrees {
  /** Products that are summed for a test of several coefficients before it takes too long. */
  private static final double MOST_PRODUCTS = 2e9;

  private final List<ClusterInfluence> clusters;
  private final RealMatrix root;

  /**
   * @param clusters adjusted
   * @param root L with L L' = (X'WX)^-1
   */
  SandwichDegrees(List<ClusterInfluence> clusters, RealMatrix root) {
    this.clusters = List.copyOf(clusters);
    this.root = root;
  }

  /** Of the variance of one coefficient; more than 0 where the coefficient has one. */
  double ofCoefficient(int term) {
    double trace = 0;
    double squares = 0;
    int p = root.getColumnDimension();
    double[][] outer = new double[p][p];
    for (ClusterInfluence cluster : clusters) {
      double[] half = root.preMultiply(cluster.sums().getColumn(term));
      double fitted = 0;
      for (int a = 0; a < p; a++) {
        fitted += half[a] * half[a];
        for (int b = 0; b < p; b++) {
          outer[a][b] += half[a] * half[b];
        }
      }
      double own = cluster.variance().getEntry(term, term) - fitted;
      trace += own;
      squares += own * own - fitted * fitted;
    }
    for (double[] row : outer) {
      for (double entry : row) {
        squares += entry * entry;
      }
    }
    return trace * trace / squares;
  }

  /**
   * Of the matrix of variances of several coefficients: q(q + 1) / sum Var(d_st), the d_st being
   * its entries after the coefficients are made uncorrelated with variance 1 (Tipton and
   * Pustejovsky, J Educ Behav Stat 2015;40:604, the approximation of Zhang).
   *
   * @param multiples a row for each coefficient, a column for each of the q uncorrelated sums
   * @return empty if clusters and coefficients are too many to sum over all pairs
   */
  OptionalDouble ofSeveral(RealMatrix multiples) {
    int q = multiples.getColumnDimension();
    double m = clusters.size();
    if (m * m * q * q * root.getColumnDimension() > MOST_PRODUCTS) {
      return OptionalDouble.empty();
    }
    List<ClusterInfluence> sums = new ArrayList<>();
    List<RealMatrix> halves = new ArrayList<>();
    for (ClusterInfluence cluster : clusters) {
      ClusterInfluence combined = cluster.combined(multiples);
      sums.add(combined);
      halves.add(root.transpose().multiply(combined.sums()));
    }
    double variance = 0;
    for (int j = 0; j < sums.size(); j++) {
      Work.check();
      for (int k = 0; k < sums.size(); k++) {
        RealMatrix between = halves.get(j).transpose().multiply(halves.get(k)).scalarMultiply(-1);
        variance += spread(j == k ? between.add(sums.get(j).variance()) : between);
      }
    }
    return OptionalDouble.of(q * (q + 1) / variance);
  }

  /** The sum over s and t of P_ss P_tt + P_st P_ts. */
  private static double spread(RealMatrix pair) {
    double trace = pair.getTrace();
    return trace * trace + pair.multiply(pair).getTrace();
  }
}
