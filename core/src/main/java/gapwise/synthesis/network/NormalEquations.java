package gapwise.synthesis.network;

import java.util.List;

/**
 * The weighted normal equations X'WX b = X'Wy of sparse rows, scaled to a diagonal of 1 and
 * factored as L L' (Cholesky). A diagonal entry without any row, and a pivot that rounding made
 * less than it can be, is replaced by the smallest one that counts, so that solving never divides
 * by 0.
 */
final class NormalEquations {
  /** What rounding leaves of a pivot that should be 0. */
  private static final double SMALLEST_PIVOT = 1e-14;

  private final int size;
  private final double[] scale;
  private final double[][] factor;
  private double smallestPivot = 1;

  /**
   * The equations of all rows but one.
   *
   * @param skipped the row left out, or -1
   */
  NormalEquations(int size, List<SparseRow> rows, double[] weights, int skipped) {
    this.size = size;
    double[][] information = new double[size][size];
    for (int r = 0; r < rows.size(); r++) {
      if (r != skipped) {
        add(information, rows.get(r), weights[r]);
      }
    }
    scale = new double[size];
    for (int i = 0; i < size; i++) {
      scale[i] = information[i][i] > 0 ? 1 / Math.sqrt(information[i][i]) : 1;
    }
    factor = information;
    decompose();
  }

  private static void add(double[][] information, SparseRow row, double weight) {
    int[] places = row.places();
    double[] factors = row.factors();
    for (int i = 0; i < places.length; i++) {
      double weighted = weight * factors[i];
      for (int j = 0; j <= i; j++) {
        information[places[i]][places[j]] += weighted * factors[j];
      }
    }
  }

  private void decompose() {
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = factor[i][j] * scale[i] * scale[j];
        for (int k = 0; k < j; k++) {
          sum -= factor[i][k] * factor[j][k];
        }
        if (i == j) {
          smallestPivot = Math.min(smallestPivot, sum);
          factor[i][i] = Math.sqrt(Math.max(sum, SMALLEST_PIVOT));
        } else {
          factor[i][j] = sum / factor[j][j];
        }
      }
    }
  }

  /** Whether every parameter is determined with digits to spare. */
  boolean isDetermined() {
    return smallestPivot > 100 * SMALLEST_PIVOT;
  }

  /** The solution for a right-hand side. */
  double[] solve(double[] right) {
    double[] x = lower(right);
    return upper(x);
  }

  /** The square of the root form: c' (X'WX)^-1 c. */
  double variance(SparseRow row) {
    double[] right = new double[size];
    for (int i = 0; i < row.places().length; i++) {
      right[row.places()[i]] = row.factors()[i];
    }
    double sum = 0;
    for (double part : lower(right)) {
      sum += part * part;
    }
    return sum;
  }

  /** (X'WX)^-1, for many variances at a cost that does not grow with the parameters. */
  double[][] inverse() {
    double[][] inverse = new double[size][];
    for (int i = 0; i < size; i++) {
      double[] unit = new double[size];
      unit[i] = 1;
      inverse[i] = solve(unit);
    }
    return inverse;
  }

  /** A vector of independent standard normal values carried to the parameters' covariance. */
  double[] scatter(double[] standard) {
    return upper(standard.clone());
  }

  /** log det(X'WX). */
  double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += Math.log(factor[i][i]) - Math.log(scale[i]);
    }
    return 2 * sum;
  }

  private double[] lower(double[] right) {
    double[] x = new double[size];
    for (int i = 0; i < size; i++) {
      double sum = right[i] * scale[i];
      for (int k = 0; k < i; k++) {
        sum -= factor[i][k] * x[k];
      }
      x[i] = sum / factor[i][i];
    }
    return x;
  }

  private double[] upper(double[] x) {
    for (int i = size - 1; i >= 0; i--) {
      double sum = x[i];
      for (int k = i + 1; k < size; k++) {
        sum -= factor[k][i] * x[k];
      }
      x[i] = sum / factor[i][i];
    }
    for (int i = 0; i < size; i++) {
      x[i] *= scale[i];
    }
    return x;
  }
}
