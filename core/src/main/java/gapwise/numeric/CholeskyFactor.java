package gapwise.numeric;

/**
 * A symmetric positive definite matrix as a triangle times its transpose, to solve with. Where the
 * matrix is not positive definite a pivot is raised, so that what is solved is one nearby that is.
 * Immutable.
 */
public final class CholeskyFactor {
  /** Pivots below this share of their own diagonal entry are taken for rounding. */
  private static final double LEAST_PIVOT = 1e-14;

  /** What such a pivot is raised to. */
  private static final double RAISED = 1e-8;

  private static final double TINY = 1e-300;

  private final double[][] lower;
  private final boolean proper;

  private CholeskyFactor(double[][] lower, boolean proper) {
    this.lower = lower;
    this.proper = proper;
  }

  /**
   * Takes a matrix apart.
   *
   * @param matrix symmetric; only what lies on and below the diagonal is read; may have no rows
   */
  public static CholeskyFactor of(double[][] matrix) {
    int n = matrix.length;
    double[][] lower = new double[n][n];
    boolean proper = true;
    for (int j = 0; j < n; j++) {
      double pivot = matrix[j][j] - dot(lower[j], lower[j], j);
      double own = Math.abs(matrix[j][j]);
      if (!(pivot > LEAST_PIVOT * own)) {
        proper = false;
        pivot = Math.max(RAISED * own, TINY);
      }
      lower[j][j] = Math.sqrt(pivot);
      for (int i = j + 1; i < n; i++) {
        lower[i][j] = (matrix[i][j] - dot(lower[i], lower[j], j)) / lower[j][j];
      }
    }
    return new CholeskyFactor(lower, proper);
  }

  private static double dot(double[] a, double[] b, int count) {
    double sum = 0;
    for (int l = 0; l < count; l++) {
      sum += a[l] * b[l];
    }
    return sum;
  }

  /** Whether the matrix was positive definite as it came. */
  public boolean isProper() {
    return proper;
  }

  /** The logarithm of the determinant. */
  public double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < lower.length; i++) {
      sum += 2 * Math.log(lower[i][i]);
    }
    return sum;
  }

  /**
   * The lower triangle times some numbers: independent normal values to those of this covariance.
   */
  public double[] times(double[] right) {
    double[] product = new double[lower.length];
    for (int i = 0; i < product.length; i++) {
      product[i] = dot(lower[i], right, i + 1);
    }
    return product;
  }

  /** What the matrix takes to these numbers, one a row. */
  public double[] solve(double[] right) {
    int n = lower.length;
    double[] solved = right.clone();
    for (int i = 0; i < n; i++) {
      solved[i] = (solved[i] - dot(lower[i], solved, i)) / lower[i][i];
    }
    for (int i = n - 1; i >= 0; i--) {
      for (int l = i + 1; l < n; l++) {
        solved[i] -= lower[l][i] * solved[l];
      }
      solved[i] /= lower[i][i];
    }
    return solved;
  }

  /** The inverse, row after row. */
  public double[][] inverse() {
    int n = lower.length;
    double[][] inverse = new double[n][];
    for (int j = 0; j < n; j++) {
      double[] unit = new double[n];
      unit[j] = 1;
      inverse[j] = solve(unit);
    }
    return inverse;
  }
}
