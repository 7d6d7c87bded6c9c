package gapwise.synthesis.likelihood;

import gapwise.synthesis.regression.DesignMatrix;
import java.util.Arrays;

/**
 * The mean of each study as an offset and a sum of columns at right angles to each other, each of
 * length 1. Searches go over the multiples of these columns, so that neither the units of
 * moderators nor columns that are nearly alike, as those of a spline, make them any harder.
 * Immutable.
 */
final class LinearMeans {
  private final double[] values;
  private final double[] offsets;
  private final int columns;

  private LinearMeans(double[] values, double[] offsets, int columns) {
    this.values = values;
    this.offsets = offsets;
    this.columns = columns;
  }

  /** Number of studies. */
  int studies() {
    return offsets.length;
  }

  /** Number of columns; may be 0 when all is held. */
  int columns() {
    return columns;
  }

  double value(int study, int column) {
    return values[study * columns + column];
  }

  /** The mean of a study where the columns are taken so many times. */
  double mean(int study, double[] times) {
    double sum = offsets[study];
    for (int j = 0; j < columns; j++) {
      sum += values[study * columns + j] * times[j];
    }
    return sum;
  }

  /** How far a step moves the mean of any study, at most. */
  double farthest(double[] step) {
    double most = 0;
    for (int i = 0; i < studies(); i++) {
      most = Math.max(most, Math.abs(mean(i, step) - offsets[i]));
    }
    return most;
  }

  /**
   * The same means with one direction of the multiples held: what is left are the directions at
   * right angles to it, by the reflection that takes the first column to it (Householder).
   *
   * @param direction of length 1
   * @param times how often the direction is taken
   */
  LinearMeans held(double[] direction, double times) {
    double[][] turned = atRightAngles(direction);
    double[] left = new double[studies() * (columns - 1)];
    double[] moved = offsets.clone();
    for (int i = 0; i < studies(); i++) {
      for (int j = 0; j < columns; j++) {
        moved[i] += times * value(i, j) * direction[j];
        for (int c = 0; c < columns - 1; c++) {
          left[i * (columns - 1) + c] += value(i, j) * turned[c][j];
        }
      }
    }
    return new LinearMeans(left, moved, columns - 1);
  }

  /** The directions at right angles to one, each of length 1. */
  static double[][] atRightAngles(double[] direction) {
    int n = direction.length;
    double[] v = direction.clone();
    v[0] += v[0] < 0 ? -1 : 1;
    double square = Arrays.stream(v).map(x -> x * x).sum();
    double[][] turned = new double[n - 1][n];
    for (int c = 1; c < n; c++) {
      for (int j = 0; j < n; j++) {
        turned[c - 1][j] = (j == c ? 1 : 0) - 2 * v[c] * v[j] / square;
      }
    }
    return turned;
  }

  /**
   * A design and the way from multiples of its right-angled columns to its coefficients.
   *
   * @param means without offsets
   */
  record Turned(LinearMeans means, double[][] triangle) {
    /**
     * Gram and Schmidt's way, twice over, so that columns stay at right angles to the last digit:
     * design = columns times triangle.
     *
     * @param design of full rank
     */
    static Turned of(DesignMatrix design) {
      int k = design.rows();
      int p = design.columns();
      double[][] columns = new double[p][k];
      double[][] triangle = new double[p][p];
      for (int j = 0; j < p; j++) {
        double largest = 0;
        for (int i = 0; i < k; i++) {
          largest = Math.max(largest, Math.abs(design.value(i, j)));
        }
        for (int i = 0; i < k; i++) {
          columns[j][i] = design.value(i, j) / largest;
        }
        for (int pass = 0; pass < 2; pass++) {
          for (int c = 0; c < j; c++) {
            double dot = dot(columns[c], columns[j]);
            triangle[c][j] += dot;
            for (int i = 0; i < k; i++) {
              columns[j][i] -= dot * columns[c][i];
            }
          }
        }
        double length = Math.sqrt(dot(columns[j], columns[j]));
        triangle[j][j] = length;
        for (int i = 0; i < k; i++) {
          columns[j][i] /= length;
        }
        for (int c = 0; c <= j; c++) {
          triangle[c][j] *= largest;
        }
      }
      double[] values = new double[k * p];
      for (int i = 0; i < k; i++) {
        for (int j = 0; j < p; j++) {
          values[i * p + j] = columns[j][i];
        }
      }
      return new Turned(new LinearMeans(values, new double[k], p), triangle);
    }

    private static double dot(double[] a, double[] b) {
      double sum = 0;
      for (int i = 0; i < a.length; i++) {
        sum += a[i] * b[i];
      }
      return sum;
    }

    /**
     * What a sum of coefficients, each taken so many times, is in multiples of the columns: the g
     * with g'(multiples) = c'(coefficients).
     */
    double[] carried(double[] sum) {
      double[] carried = sum.clone();
      for (int j = 0; j < carried.length; j++) {
        for (int c = 0; c < j; c++) {
          carried[j] -= triangle[c][j] * carried[c];
        }
        carried[j] /= triangle[j][j];
      }
      return carried;
    }
  }
}
