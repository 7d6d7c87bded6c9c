package gapwise.numeric;

import gapwise.budget.Work;
import java.util.Arrays;

/**
 * The Householder reflections that bring weighted rows to triangular form, with columns scaled and
 * pivoted and rows interchanged as {@link LeastSquares} tells: for A with its columns scaled by S,
 * A S = Q R.
 */
final class Reflections {
  private final int count;
  private final int columns;

  /** Column after column in pivoted order: above the diagonal R, from it on the reflections. */
  private final double[][] work;

  private final double[] diagonal;
  private final double[] factors;
  private final double[] scales;
  private final int[] columnOrder;
  private final int[] rowOrder;
  private boolean fullRank = true;

  private Reflections(int count, int columns) {
    this.count = count;
    this.columns = columns;
    work = new double[columns][count];
    diagonal = new double[columns];
    factors = new double[columns];
    scales = new double[columns];
    columnOrder = new int[columns];
    rowOrder = new int[count];
  }

  static Reflections of(double[] rows, int columns, double[] rootWeights) {
    Reflections made = new Reflections(rootWeights.length, columns);
    made.fill(rows, rootWeights);
    for (int j = 0; j < columns && made.fullRank; j++) {
      Work.check();
      made.pivot(j);
      made.reflect(j);
    }
    return made;
  }

  boolean isFullRank() {
    return fullRank;
  }

  private void fill(double[] rows, double[] rootWeights) {
    Arrays.setAll(rowOrder, i -> i);
    Arrays.setAll(columnOrder, j -> j);
    for (int j = 0; j < columns; j++) {
      double largest = 0;
      for (int i = 0; i < count; i++) {
        work[j][i] = rootWeights[i] * rows[i * columns + j];
        largest = Math.max(largest, Math.abs(work[j][i]));
      }
      // A power of two, so that scaling itself rounds nothing.
      scales[j] = largest == 0 ? 1 : Math.scalb(1.0, -Math.getExponent(largest));
      for (int i = 0; i < count; i++) {
        work[j][i] *= scales[j];
      }
    }
  }

  private void pivot(int step) {
    int longest = step;
    double most = -1;
    for (int j = step; j < columns; j++) {
      double norm = squares(work[j], step);
      if (norm > most) {
        most = norm;
        longest = j;
      }
    }
    double[] column = work[longest];
    work[longest] = work[step];
    work[step] = column;
    double scale = scales[longest];
    scales[longest] = scales[step];
    scales[step] = scale;
    int place = columnOrder[longest];
    columnOrder[longest] = columnOrder[step];
    columnOrder[step] = place;
    int top = step;
    for (int i = step + 1; i < count; i++) {
      if (Math.abs(column[i]) > Math.abs(column[top])) {
        top = i;
      }
    }
    if (top != step) {
      for (double[] each : work) {
        double entry = each[top];
        each[top] = each[step];
        each[step] = entry;
      }
      int row = rowOrder[top];
      rowOrder[top] = rowOrder[step];
      rowOrder[step] = row;
    }
  }

  private double squares(double[] column, int from) {
    double sum = 0;
    for (int i = from; i < count; i++) {
      sum += column[i] * column[i];
    }
    return sum;
  }

  private void reflect(int step) {
    double[] column = work[step];
    double norm = Math.sqrt(squares(column, step));
    if (!(norm > Double.MIN_NORMAL && norm < Double.MAX_VALUE)) {
      fullRank = false;
      return;
    }
    double sign = column[step] < 0 ? -1 : 1;
    factors[step] = 1 / (norm * (norm + Math.abs(column[step])));
    diagonal[step] = -sign * norm;
    column[step] += sign * norm;
    for (int j = step + 1; j < columns; j++) {
      apply(step, work[j]);
    }
  }

  private void apply(int step, double[] vector) {
    double[] column = work[step];
    double dot = 0;
    for (int i = step; i < count; i++) {
      dot += column[i] * vector[i];
    }
    dot *= factors[step];
    for (int i = step; i < count; i++) {
      vector[i] -= dot * column[i];
    }
  }

  /** R b = d for the leading part of d, in place. */
  private void backward(double[] d) {
    for (int j = columns - 1; j >= 0; j--) {
      d[j] /= diagonal[j];
      for (int i = 0; i < j; i++) {
        d[i] -= work[j][i] * d[j];
      }
    }
  }

  /** R'u = g, in place. */
  private void forward(double[] g) {
    for (int j = 0; j < columns; j++) {
      for (int i = 0; i < j; i++) {
        g[j] -= work[j][i] * g[i];
      }
      g[j] /= diagonal[j];
    }
  }

  /**
   * Solves r + A b = f, A'r = g.
   *
   * @param residuals takes r
   * @param solution takes b
   */
  void solve(double[] fit, double[] normal, double[] residuals, double[] solution) {
    double[] d = new double[count];
    for (int i = 0; i < count; i++) {
      d[i] = fit[rowOrder[i]];
    }
    for (int j = 0; j < columns; j++) {
      apply(j, d);
    }
    double[] u = ordered(normal);
    forward(u);
    double[] b = new double[columns];
    for (int j = 0; j < columns; j++) {
      b[j] = d[j] - u[j];
      d[j] = u[j];
    }
    backward(b);
    for (int j = columns - 1; j >= 0; j--) {
      apply(j, d);
    }
    for (int j = 0; j < columns; j++) {
      solution[columnOrder[j]] = scales[j] * b[j];
    }
    for (int i = 0; i < count; i++) {
      residuals[rowOrder[i]] = d[i];
    }
  }

  private double[] ordered(double[] vector) {
    double[] ordered = new double[columns];
    for (int j = 0; j < columns; j++) {
      ordered[j] = scales[j] * vector[columnOrder[j]];
    }
    return ordered;
  }

  /** x'(A'A)^-1 x. */
  double quadratic(double[] x) {
    if (!fullRank) {
      return Double.POSITIVE_INFINITY;
    }
    double[] u = ordered(x);
    forward(u);
    double sum = 0;
    for (double entry : u) {
      sum += entry * entry;
    }
    return sum;
  }

  /** The largest entry of R's diagonal over the smallest, near the condition of the columns. */
  double spread() {
    double largest = 0;
    double smallest = Double.POSITIVE_INFINITY;
    for (double entry : diagonal) {
      largest = Math.max(largest, Math.abs(entry));
      smallest = Math.min(smallest, Math.abs(entry));
    }
    return largest / smallest;
  }

  double logDeterminant() {
    double sum = 0;
    for (int j = 0; j < columns; j++) {
      sum += 2 * (Math.log(Math.abs(diagonal[j])) - Math.log(scales[j]));
    }
    return sum;
  }

  /** 1 less the squared length of each row of Q, in the order the rows came, at least 0. */
  double[] remainders() {
    double[] lengths = new double[count];
    double[] unit = new double[count];
    for (int j = 0; j < columns; j++) {
      Arrays.fill(unit, 0);
      unit[j] = 1;
      for (int step = j; step >= 0; step--) {
        apply(step, unit);
      }
      for (int i = 0; i < count; i++) {
        lengths[rowOrder[i]] += unit[i] * unit[i];
      }
    }
    for (int i = 0; i < count; i++) {
      lengths[i] = Math.max(0, 1 - lengths[i]);
    }
    return lengths;
  }
}
