package gapwise.synthesis.regression;

import gapwise.budget.Work;
import gapwise.numeric.SymmetricMatrix;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Coefficients that only one cluster tells. Without that cluster the other rows would say nothing
 * of them, so its residuals cannot show how far they would move with another cluster: a sandwich
 * counts this part as 0.
 *
 * <p>With L L' = M = (X'WX)^-1, the directions that cluster j alone tells are those in which L'
 * X_j'W_j X_j L has the eigenvalue 1.
 */
final class ToldByOneCluster {
  /** Nearer to 1 than this, and smaller parts of a variance than this, are rounding. */
  private static final double ROUNDING = 1e-8;

  private ToldByOneCluster() {}

  /**
   * The places of such coefficients, each with the first cluster that alone tells it.
   *
   * @param root L
   */
  static Map<Integer, String> of(
      ClusteredFit fit, Map<String, List<Integer>> clusters, RealMatrix root) {
    Map<Integer, String> told = new LinkedHashMap<>();
    clusters.forEach(
        (cluster, places) -> {
          Work.check();
          RealMatrix information =
              fit.rows(places).transpose().multiply(fit.covariance().inverseTimesDesign(places));
          RealMatrix shares = root.transpose().multiply(information).multiply(root);
          // Eigenvalues are not below 0, so with a smaller sum none is 1: all but a few clusters.
          if (shares.getTrace() >= 1 - ROUNDING) {
            alone(SymmetricMatrix.of(shares), root, cluster, told);
          }
        });
    return told;
  }

  private static void alone(
      SymmetricMatrix shares, RealMatrix root, String cluster, Map<Integer, String> told) {
    double[] parts = new double[root.getRowDimension()];
    for (int l = 0; l < shares.size(); l++) {
      if (shares.value(l) >= 1 - ROUNDING) {
        double[] direction = root.operate(shares.direction(l)).toArray();
        for (int k = 0; k < parts.length; k++) {
          parts[k] += direction[k] * direction[k];
        }
      }
    }
    for (int k = 0; k < parts.length; k++) {
      double variance = root.getRowVector(k).dotProduct(root.getRowVector(k));
      if (parts[k] > ROUNDING * variance) {
        told.putIfAbsent(k, cluster);
      }
    }
  }
}
