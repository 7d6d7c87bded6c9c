package gapwise.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A symmetric matrix without negative eigenvalues, taken apart into eigenvalues and directions.
 * Time grows with the cube of its size.
 */
public final class SymmetricMatrix {
  /** Eigenvalues below this share of the largest are 0 but for rounding. */
  private static final double NOTHING = 1e-12;

  private final EigenDecomposition apart;
  private final double largest;

  private SymmetricMatrix(EigenDecomposition apart) {
    this.apart = apart;
    double most = 0;
    for (double value : apart.getRealEigenvalues()) {
      most = Math.max(most, value);
    }
    this.largest = most;
  }

  /**
   * Takes a matrix apart.
   *
   * @param matrix symmetric up to rounding, of finite numbers
   * @throws IllegalArgumentException if a number is not finite
   */
  public static SymmetricMatrix of(RealMatrix matrix) {
    int n = matrix.getRowDimension();
    double[][] even = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        even[i][j] = matrix.getEntry(i, j) / 2 + matrix.getEntry(j, i) / 2;
        if (!Double.isFinite(even[i][j])) {
          throw new IllegalArgumentException("a number of the matrix is " + even[i][j]);
        }
      }
    }
    return new SymmetricMatrix(new EigenDecomposition(new Array2DRowRealMatrix(even, false)));
  }

  /** Number of rows. */
  public int size() {
    return apart.getRealEigenvalues().length;
  }

  /** One eigenvalue. */
  public double value(int place) {
    return apart.getRealEigenvalue(place);
  }

  /** Its direction, of length 1. */
  public RealVector direction(int place) {
    return apart.getEigenvector(place);
  }

  /** The symmetric matrix without negative eigenvalues whose square is this one. */
  public RealMatrix root() {
    return with(Math::sqrt);
  }

  /**
   * The symmetric matrix whose square is the inverse; in directions of eigenvalue 0 it is 0 (the
   * root of the Moore-Penrose inverse).
   */
  public RealMatrix inverseRoot() {
    return with(value -> 1 / Math.sqrt(value));
  }

  private RealMatrix with(DoubleUnaryOperator change) {
    int n = size();
    RealMatrix changed = MatrixUtils.createRealMatrix(n, n);
    for (int l = 0; l < n; l++) {
      if (value(l) > NOTHING * largest) {
        RealVector direction = direction(l);
        double factor = change.applyAsDouble(value(l));
        changed = changed.add(direction.outerProduct(direction).scalarMultiply(factor));
      }
    }
    return changed;
  }
}
