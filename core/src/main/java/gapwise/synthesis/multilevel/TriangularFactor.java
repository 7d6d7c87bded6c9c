package gapwise.synthesis.multilevel;

/**
 * Least squares by Householder reflections (Golub and Van Loan, Matrix Computations, section 5.3):
 * the triangular factor of a design, the coefficients and the residual sum of squares. Time grows
 * with rows times squared columns.
 */
final class TriangularFactor {
  /** Columns nearer to dependent than this cannot be told from it in doubles. */
  private static final double DEPENDENT = 1e-13;

  private final double[][] upper;
  private final double[] coefficients;
  private final double residualSquares;
  private final double[][] inverse;

  /**
   * Solves.
   *
   * @param columns those of the design and last that of the outcome; overwritten
   * @throws IllegalArgumentException if columns are linearly dependent
   */
  TriangularFactor(double[][] columns) {
    int p = columns.length - 1;
    int k = columns[0].length;
    upper = new double[p][p];
    coefficients = new double[p];
    for (int j = 0; j < p; j++) {
      double before = norm(columns[j], 0);
      double length = norm(columns[j], j);
      if (!(length > DEPENDENT * before)) {
        throw new IllegalArgumentException("columns of the design are linearly dependent");
      }
      double head = columns[j][j];
      double diagonal = head > 0 ? -length : length;
      columns[j][j] = head - diagonal;
      for (int other = j + 1; other <= p; other++) {
        reflect(columns[j], columns[other], j, -1 / (diagonal * columns[j][j]));
      }
      upper[j][j] = diagonal;
      for (int above = 0; above < j; above++) {
        upper[above][j] = columns[j][above];
      }
    }
    for (int j = p - 1; j >= 0; j--) {
      double sum = columns[p][j];
      for (int other = j + 1; other < p; other++) {
        sum -= upper[j][other] * coefficients[other];
      }
      coefficients[j] = sum / upper[j][j];
    }
    double squares = 0;
    for (int i = p; i < k; i++) {
      squares += columns[p][i] * columns[p][i];
    }
    residualSquares = squares;
    inverse = inverted(upper);
  }

  private static double norm(double[] column, int from) {
    double scale = 0;
    for (int i = from; i < column.length; i++) {
      scale = Math.max(scale, Math.abs(column[i]));
    }
    if (scale == 0) {
      return 0;
    }
    double sum = 0;
    for (int i = from; i < column.length; i++) {
      double share = column[i] / scale;
      sum += share * share;
    }
    return scale * Math.sqrt(sum);
  }

  private static void reflect(double[] vector, double[] column, int from, double factor) {
    double dot = 0;
    for (int i = from; i < column.length; i++) {
      dot += vector[i] * column[i];
    }
    double times = factor * dot;
    for (int i = from; i < column.length; i++) {
      column[i] -= times * vector[i];
    }
  }

  private static double[][] inverted(double[][] upper) {
    int p = upper.length;
    double[][] inverse = new double[p][p];
    for (int j = 0; j < p; j++) {
      inverse[j][j] = 1 / upper[j][j];
      for (int i = j - 1; i >= 0; i--) {
        double sum = 0;
        for (int l = i + 1; l <= j; l++) {
          sum += upper[i][l] * inverse[l][j];
        }
        inverse[i][j] = -sum / upper[i][i];
      }
    }
    return inverse;
  }

  double coefficient(int term) {
    return coefficients[term];
  }

  double residualSquares() {
    return residualSquares;
  }

  /** log det(X'X). */
  double logDeterminant() {
    double sum = 0;
    for (int j = 0; j < upper.length; j++) {
      sum += 2 * Math.log(Math.abs(upper[j][j]));
    }
    return sum;
  }

  /** An entry of the inverse of X'X. */
  double covariance(int one, int other) {
    double sum = 0;
    for (int l = Math.max(one, other); l < inverse.length; l++) {
      sum += inverse[one][l] * inverse[other][l];
    }
    return sum;
  }

  /** The quadratic form of the inverse of X'X. */
  double quadratic(double[] vector) {
    double sum = 0;
    for (int l = 0; l < inverse.length; l++) {
      double dot = 0;
      for (int j = 0; j <= l; j++) {
        dot += vector[j] * inverse[j][l];
      }
      sum += dot * dot;
    }
    return sum;
  }

  /** The inverse of X'X times a vector. */
  double[] solve(double[] vector) {
    double[] solved = new double[vector.length];
    for (int i = 0; i < solved.length; i++) {
      for (int j = 0; j < vector.length; j++) {
        solved[i] += covariance(i, j) * vector[j];
      }
    }
    return solved;
  }
}
