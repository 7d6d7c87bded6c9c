package gapwise.numeric;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * For counts n of any size, the sum over them of f(0) + f(1) + ... + f(n - 1), for functions as
 * smooth as log(a + x) with an a above 0.
 *
 * <p>Up to 256 every term is taken. Beyond, the terms of each stretch from s to 2s are summed by
 * the Gauss rule for a sum of equal terms in place of an integral: ten nodes, exact for polynomials
 * up to degree 19, by Golub and Welsch (Math Comp 1969;23:221) from the recurrence of Chebyshev's
 * polynomials of a discrete variable (Abramowitz and Stegun, table 22.7, from memory). Seen from a
 * stretch, a pole at or below 0 lies three half lengths from its middle, so what is left out is
 * about (3 + root 8)^-20, 5e-16, of the terms.
 */
public final class StepSums {
  private static final int ONE_BY_ONE = 256;
  private static final int NODES = 10;

  /** The largest count below which a double knows every whole number. */
  private static final double MOST = 0x1p53;

  private final double[] places;
  private final double[] weights;
  private int size;

  private StepSums(int most) {
    places = new double[most];
    weights = new double[most];
  }

  /**
   * The sums of some counts.
   *
   * @param counts whole numbers, each from 0 to 2^53, in any order, which does not matter
   */
  public static StepSums of(double[] counts) {
    double[] sorted = counts.clone();
    Arrays.sort(sorted);
    double most = sorted.length == 0 ? 0 : sorted[sorted.length - 1];
    if (sorted.length > 0 && !(sorted[0] >= 0 && most <= MOST)) {
      throw new IllegalArgumentException(
          "counts from 0 to 2^53, were " + sorted[0] + " to " + most);
    }
    int over = over(sorted, ONE_BY_ONE);
    StepSums sums = new StepSums(ONE_BY_ONE + NODES * (over + 64));
    for (int j = 0; j < ONE_BY_ONE && j < most; j++) {
      sums.add(j, over(sorted, j));
    }
    for (double from = ONE_BY_ONE; from < most; from *= 2) {
      int whole = over(sorted, 2 * from - 1);
      if (whole > 0) {
        sums.stretch(from, from, whole);
      }
      for (int i = sorted.length - over(sorted, from); i < sorted.length - whole; i++) {
        sums.stretch(from, sorted[i] - from, 1);
      }
    }
    return sums;
  }

  /** How many of some rising counts lie above a number. */
  private static int over(double[] sorted, double number) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (sorted[middle] > number) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return sorted.length - low;
  }

  private void add(double place, double weight) {
    places[size] = place;
    weights[size] = weight;
    size++;
  }

  /** The terms at from, from + 1, ..., from + length - 1, each some times. */
  private void stretch(double from, double length, double times) {
    if (length <= NODES) {
      for (int j = 0; j < length; j++) {
        add(from + j, times);
      }
      return;
    }
    double[][] recurrence = new double[NODES][NODES];
    for (int k = 1; k < NODES; k++) {
      double share = (double) k / length;
      double next = length / 2 * k * Math.sqrt((1 - share * share) / (4.0 * k * k - 1));
      recurrence[k][k - 1] = next;
      recurrence[k - 1][k] = next;
    }
    EigenDecomposition apart = new EigenDecomposition(new Array2DRowRealMatrix(recurrence, false));
    double middle = from + (length - 1) / 2;
    for (int k = 0; k < NODES; k++) {
      double first = apart.getEigenvector(k).getEntry(0);
      add(middle + apart.getRealEigenvalue(k), times * length * first * first);
    }
  }

  /** The sum of a function over all steps of all counts. */
  public double of(DoubleUnaryOperator function) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += weights[i] * function.applyAsDouble(places[i]);
    }
    return sum;
  }
}
