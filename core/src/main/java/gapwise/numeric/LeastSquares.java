package gapwise.numeric;

import gapwise.budget.Work;

/**
 * Weighted least squares: the b that makes sum w (y - x'b)^2 smallest.
 *
 * <p>Idea: the rows, times the roots of their weights, are brought to triangular form by
 * Householder reflections. Columns are scaled by powers of two and pivoted, and at each step the
 * row with the largest entry goes first, so that each row is met with an error relative to its own
 * size however far weights lie apart (Powell and Reid 1969; Cox and Higham, in Numerical Analysis
 * 1997, p. 57). The solution is then refined on the augmented system of residuals and coefficients,
 * with the residuals summed in twice the digits of a double (Björck, BIT 1967;7:257; Higham,
 * Accuracy and Stability of Numerical Algorithms, 2002, section 20.5), so that it is the solution
 * for the given rows to nearly all digits as long as columns are not collinear to the last digit.
 * Time grows with rows times columns squared.
 */
public final class LeastSquares {
  /** Refinement gains as many digits a step as the rows leave; five steps are plenty. */
  private static final int MOST_STEPS = 5;

  /** Columns so far from collinear lose a digit at most, and need no refinement. */
  private static final double WELL_APART = 10;

  /** Columns so far apart that ten digits are left without refinement. */
  private static final double APART = 1e6;

  private final double[] rows;
  private final double[] rootWeights;
  private final Reflections reflections;
  private final int count;
  private final int columns;

  private LeastSquares(double[] rows, int columns, double[] rootWeights) {
    this.rows = rows;
    this.columns = columns;
    this.rootWeights = rootWeights;
    this.count = rootWeights.length;
    this.reflections = Reflections.of(rows, columns, rootWeights);
  }

  /**
   * Prepares the rows.
   *
   * @param rows row after row, finite, not changed afterwards
   * @param columns of each row, at least 1 and at most as many as rows
   * @param weights above 0 and finite, one a row
   * @throws IllegalArgumentException if the sizes do not fit
   */
  public static LeastSquares of(double[] rows, int columns, double[] weights) {
    if (columns < 1 || rows.length != columns * weights.length || weights.length < columns) {
      throw new IllegalArgumentException(
          rows.length + " numbers are no " + weights.length + " rows of " + columns);
    }
    double[] roots = new double[weights.length];
    for (int i = 0; i < roots.length; i++) {
      roots[i] = Math.sqrt(weights[i]);
    }
    return new LeastSquares(rows, columns, roots);
  }

  /** Whether the weighted columns are independent, so that there is one solution. */
  public boolean isFullRank() {
    return reflections.isFullRank();
  }

  /** log det(X'WX). */
  public double logDeterminant() {
    return reflections.logDeterminant();
  }

  /** (X'WX)^-1, row after row; refined as the solution is. */
  public double[][] inverse() {
    double[][] inverse = new double[columns][columns];
    for (int j = 0; j < columns; j++) {
      double[] unit = new double[columns];
      unit[j] = -1;
      double[] nothing = new double[count];
      double[] residuals = new double[count];
      double[] solution = new double[columns];
      reflections.solve(nothing, unit, residuals, solution);
      if (reflections.spread() >= WELL_APART) {
        refine(nothing, unit, residuals, solution);
      }
      for (int i = 0; i <= j; i++) {
        inverse[i][j] = solution[i];
        inverse[j][i] = solution[i];
      }
    }
    return inverse;
  }

  /**
   * 1 - h for each row, h the diagonal of the projection onto the columns, at least 0. A row that
   * determines the fit nearly alone has h next to 1; there 1 - h comes from the fit without it,
   * 1/(1 + w x'(X'WX)^-1 x), which takes nothing from 1. At most as many rows as columns can be
   * such.
   */
  public double[] remainders() {
    double[] remainders = reflections.remainders();
    for (int i = 0; i < count; i++) {
      if (remainders[i] < 1e-4) {
        remainders[i] = without(i);
      }
    }
    return remainders;
  }

  private double without(int row) {
    Work.check();
    if (count - 1 < columns) {
      return 0;
    }
    double[] others = new double[rows.length - columns];
    double[] roots = new double[count - 1];
    System.arraycopy(rows, 0, others, 0, row * columns);
    System.arraycopy(
        rows, (row + 1) * columns, others, row * columns, others.length - row * columns);
    System.arraycopy(rootWeights, 0, roots, 0, row);
    System.arraycopy(rootWeights, row + 1, roots, row, count - 1 - row);
    Reflections rest = Reflections.of(others, columns, roots);
    double[] own = new double[columns];
    System.arraycopy(rows, row * columns, own, 0, columns);
    double spread = rootWeights[row] * rootWeights[row] * rest.quadratic(own);
    return rest.isFullRank() && spread < Double.MAX_VALUE ? 1 / (1 + spread) : 0;
  }

  /**
   * Fits, to nearly all digits.
   *
   * @param values y, one a row
   */
  public Solution solve(double[] values) {
    return solve(values, WELL_APART);
  }

  /**
   * Fits, to some ten digits but several times faster: for searches that fit again and again.
   *
   * @param values y, one a row
   */
  public Solution solveInSearch(double[] values) {
    return solve(values, APART);
  }

  private Solution solve(double[] values, double refinedFrom) {
    double[] target = new double[count];
    for (int i = 0; i < count; i++) {
      target[i] = rootWeights[i] * values[i];
    }
    double[] residuals = new double[count];
    double[] solution = new double[columns];
    double[] normal = new double[columns];
    reflections.solve(target, normal, residuals, solution);
    if (reflections.spread() >= refinedFrom) {
      refine(values, normal, residuals, solution);
    }
    return new Solution(solution, unweighted(values, solution, refinedFrom == WELL_APART));
  }

  /** Improves r and b of y = r + Xb, X'Wr = g, both weighted, given near their values. */
  private void refine(double[] values, double[] normal, double[] residuals, double[] solution) {
    double[] lackOfFit = new double[count];
    double[] lackOfNormality = new double[columns];
    double[] residualStep = new double[count];
    double[] step = new double[columns];
    double before = Double.POSITIVE_INFINITY;
    for (int n = 0; n < MOST_STEPS; n++) {
      Work.check();
      augmented(values, normal, residuals, solution, lackOfFit, lackOfNormality);
      reflections.solve(lackOfFit, lackOfNormality, residualStep, step);
      double change = 0;
      for (int j = 0; j < columns; j++) {
        change = Math.max(change, Math.abs(step[j]) / Math.abs(solution[j]));
      }
      // Steps that no longer shrink hold rounding only, or the columns are collinear to it.
      if (!(change < before)) {
        return;
      }
      before = change;
      for (int j = 0; j < columns; j++) {
        solution[j] += step[j];
      }
      for (int i = 0; i < count; i++) {
        residuals[i] += residualStep[i];
      }
      if (change < Math.ulp(1.0)) {
        return;
      }
    }
  }

  /** What residuals and coefficients still miss of the two equations. */
  private void augmented(
      double[] values,
      double[] normal,
      double[] residuals,
      double[] solution,
      double[] lackOfFit,
      double[] lackOfNormality) {
    ExactProducts[] sums = new ExactProducts[columns];
    for (int j = 0; j < columns; j++) {
      sums[j] = new ExactProducts();
      sums[j].set(normal[j]);
    }
    ExactProducts row = new ExactProducts();
    for (int i = 0; i < count; i++) {
      row.set(0);
      row.add(rootWeights[i], values[i]);
      for (int j = 0; j < columns; j++) {
        double x = rows[i * columns + j];
        row.add(rootWeights[i], x, -solution[j]);
        sums[j].add(rootWeights[i], residuals[i], -x);
      }
      row.add(1, -residuals[i]);
      lackOfFit[i] = row.value();
    }
    for (int j = 0; j < columns; j++) {
      lackOfNormality[j] = sums[j].value();
    }
  }

  /** y - Xb; what is not above the rounding of its own terms is 0. */
  private double[] unweighted(double[] values, double[] solution, boolean exactly) {
    double[] residuals = new double[count];
    ExactProducts sum = new ExactProducts();
    for (int i = 0; i < count; i++) {
      double residual = values[i];
      double size = Math.abs(values[i]);
      for (int j = 0; j < columns; j++) {
        double term = rows[i * columns + j] * solution[j];
        residual -= term;
        size += Math.abs(term);
      }
      if (exactly) {
        sum.set(values[i]);
        for (int j = 0; j < columns; j++) {
          sum.add(rows[i * columns + j], -solution[j]);
        }
        residual = sum.value();
      }
      residuals[i] = Math.abs(residual) > 2 * Math.ulp(1.0) * size ? residual : 0;
    }
    return residuals;
  }

  /** Coefficients and residuals of a fit. */
  public static final class Solution {
    private final double[] coefficients;
    private final double[] residuals;

    private Solution(double[] coefficients, double[] residuals) {
      this.coefficients = coefficients;
      this.residuals = residuals;
    }

    /** The coefficient of a column. */
    public double coefficient(int column) {
      return coefficients[column];
    }

    /** y - x'b of a row. */
    public double residual(int row) {
      return residuals[row];
    }
  }
}
