package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.exception.MaxCountExceededException;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Studies as independent rows. The contrasts of a study have covariance V + t S, with t the
 * variance between studies and S = (I + J)/2: 1 on the diagonal, one half off it. With R the
 * symmetric root of the inverse of S and R V R = U diag(v) U', the rows U'R y are independent with
 * variances v + t. Rows then serve every estimator that pooling has, at no cost in exactness: a
 * study of two arms is its own row.
 */
final class NetworkRows {
  /**
   * An eigenvalue is known to some 1e-16 of the largest of its study; one smaller than this share
   * of it would have fewer than six digits.
   */
  private static final double SMALLEST_SHARE = 1e-10;

  private final List<Double> effects = new ArrayList<>();
  private final List<Double> variances = new ArrayList<>();
  private final List<SparseRow> design = new ArrayList<>();
  private double logDeterminantOfS;

  /** One treatment and another that it is less, by their places. */
  private record Pair(int one, int other) {}

  private NetworkRows() {}

  /**
   * The rows of studies in the parameters of a forest. Studies of the same two treatments share one
   * sum of parameters: a fit runs through all rows many times, and thousands of equal ones apart in
   * memory cost it four times as long as the arithmetic. Empty if the covariances of a study of
   * several arms are not those of any effects, or as good as.
   */
  static Optional<NetworkRows> of(
      List<NetworkStudy> studies, TreatmentIndex index, SpanningForest forest) {
    NetworkRows rows = new NetworkRows();
    Map<Pair, SparseRow> known = new HashMap<>();
    for (NetworkStudy study : studies) {
      Work.check();
      List<SparseRow> paths = new ArrayList<>();
      int first = index.of(study.treatments().get(0));
      for (String treatment : study.treatments().subList(1, study.treatments().size())) {
        paths.add(
            known.computeIfAbsent(
                new Pair(index.of(treatment), first),
                pair -> SparseRow.of(forest.path(pair.one(), pair.other()))));
      }
      if (study.contrasts() == 1) {
        rows.add(study.effects().get(0), study.covariance().get(0).get(0), paths.get(0));
      } else if (!rows.addRotated(study, paths)) {
        return Optional.empty();
      }
    }
    return Optional.of(rows);
  }

  private void add(double effect, double variance, SparseRow row) {
    effects.add(effect);
    variances.add(variance);
    design.add(row);
  }

  private boolean addRotated(NetworkStudy study, List<SparseRow> paths) {
    Work.check();
    int m = study.contrasts();
    RealMatrix root = inverseRoot(m);
    RealMatrix v = new Array2DRowRealMatrix(m, m);
    for (int i = 0; i < m; i++) {
      for (int j = 0; j < m; j++) {
        v.setEntry(i, j, study.covariance().get(i).get(j));
      }
    }
    RealMatrix whitened = root.multiply(v).multiply(root);
    whitened = whitened.add(whitened.transpose()).scalarMultiply(0.5);
    EigenDecomposition eigen;
    try {
      eigen = new EigenDecomposition(whitened);
    } catch (MaxCountExceededException e) {
      return false;
    }
    double[] values = eigen.getRealEigenvalues();
    double largest = values[0];
    double smallest = values[0];
    for (double value : values) {
      largest = Math.max(largest, value);
      smallest = Math.min(smallest, value);
    }
    if (!(smallest > SMALLEST_SHARE * largest)) {
      return false;
    }
    RealMatrix rotation = eigen.getV().transpose().multiply(root);
    for (int i = 0; i < m; i++) {
      double effect = 0;
      for (int j = 0; j < m; j++) {
        effect += rotation.getEntry(i, j) * study.effects().get(j);
      }
      add(effect, values[i], SparseRow.sum(paths, rotation.getRow(i)));
    }
    logDeterminantOfS += Math.log((m + 1) * Math.pow(0.5, m));
    return true;
  }

  /** The symmetric root of the inverse of S: root 2 times (I - c J) with the c that makes it so. */
  private static RealMatrix inverseRoot(int m) {
    double c = (1 - 1 / Math.sqrt(m + 1.0)) / m;
    RealMatrix root = new Array2DRowRealMatrix(m, m);
    for (int i = 0; i < m; i++) {
      for (int j = 0; j < m; j++) {
        root.setEntry(i, j, Math.sqrt(2) * ((i == j ? 1 : 0) - c));
      }
    }
    return root;
  }

  /** Effects and variances of the rows. */
  EffectSample sample() {
    return EffectSample.of(effects, variances);
  }

  /** The parameters in each row. */
  List<SparseRow> design() {
    return design;
  }

  /** Sum over studies of log det S, which the likelihood of the contrasts has beside the rows. */
  double logDeterminantOfS() {
    return logDeterminantOfS;
  }
}
