package gapwise.synthesis.network;

import gapwise.budget.Work;
import java.util.List;
import java.util.TreeSet;

/**
 * The weighted normal equations X'WX b = X'Wy of sparse rows, scaled to a diagonal of 1 and
 * factored as L L' (Cholesky), block by block. A diagonal entry without any row, and a pivot that
 * rounding made less than it can be, is replaced by the smallest one that counts, so that solving
 * never divides by 0.
 */
final class NormalEquations {
  /** What rounding leaves of a pivot that should be 0. */
  private static final double SMALLEST_PIVOT = 1e-14;

  private final ParameterBlocks blocks;
  private final double[] scale;
  private final double[][][] factors;
  private double smallestPivot = 1;

  /**
   * The equations.
   *
   * @param blocks that the rows leave apart
   */
  NormalEquations(ParameterBlocks blocks, List<SparseRow> rows, double[] weights) {
    this.blocks = blocks;
    this.factors = blocks.zeros();
    for (int r = 0; r < rows.size(); r++) {
      add(rows.get(r), weights[r]);
    }
    scale = new double[blocks.parameters()];
    for (int i = 0; i < scale.length; i++) {
      int place = blocks.place(i);
      double diagonal = factors[blocks.block(i)][place][place];
      scale[i] = diagonal > 0 ? 1 / Math.sqrt(diagonal) : 1;
    }
    for (int b = 0; b < factors.length; b++) {
      decompose(factors[b], blocks.members(b));
    }
  }

  private void add(SparseRow row, double weight) {
    int[] places = row.places();
    double[] values = row.factors();
    for (int i = 0; i < places.length; i++) {
      double weighted = weight * values[i];
      double[] information = factors[blocks.block(places[i])][blocks.place(places[i])];
      for (int j = 0; j <= i; j++) {
        information[blocks.place(places[j])] += weighted * values[j];
      }
    }
  }

  private void decompose(double[][] factor, int[] members) {
    for (int i = 0; i < members.length; i++) {
      Work.check();
      for (int j = 0; j <= i; j++) {
        double sum = factor[i][j] * scale[members[i]] * scale[members[j]];
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
    double[] x = new double[right.length];
    for (int b = 0; b < factors.length; b++) {
      double[] solved = upper(b, lower(b, right));
      put(b, solved, x);
    }
    return x;
  }

  /** The square of the root form: c' (X'WX)^-1 c. */
  double variance(SparseRow row) {
    double[] right = new double[scale.length];
    TreeSet<Integer> touched = new TreeSet<>();
    for (int i = 0; i < row.places().length; i++) {
      right[row.places()[i]] = row.factors()[i];
      touched.add(blocks.block(row.places()[i]));
    }
    double sum = 0;
    for (int b : touched) {
      for (double part : lower(b, right)) {
        sum += part * part;
      }
    }
    return sum;
  }

  /**
   * The variance of each row. Costs one inverse and then, for a row, the square of its parameters
   * and not that of all.
   */
  double[] variances(List<SparseRow> rows) {
    double[][][] inverses = new double[factors.length][][];
    for (int b = 0; b < inverses.length; b++) {
      inverses[b] = inverse(b);
    }
    double[] variances = new double[rows.size()];
    for (int r = 0; r < variances.length; r++) {
      variances[r] = quadratic(rows.get(r), inverses);
    }
    return variances;
  }

  private double[][] inverse(int b) {
    int size = blocks.members(b).length;
    double[][] inverse = new double[size][];
    double[] unit = new double[scale.length];
    for (int i = 0; i < size; i++) {
      Work.check();
      unit[blocks.members(b)[i]] = 1;
      inverse[i] = upper(b, lower(b, unit));
      unit[blocks.members(b)[i]] = 0;
    }
    return inverse;
  }

  /** x'Mx for the inverse M. */
  private double quadratic(SparseRow row, double[][][] inverses) {
    double value = 0;
    for (int i = 0; i < row.places().length; i++) {
      int block = blocks.block(row.places()[i]);
      int place = blocks.place(row.places()[i]);
      double[] line = inverses[block][place];
      double part = row.factors()[i] * line[place];
      for (int j = 0; j < i; j++) {
        if (blocks.block(row.places()[j]) == block) {
          part += 2 * row.factors()[j] * line[blocks.place(row.places()[j])];
        }
      }
      value += row.factors()[i] * part;
    }
    return value;
  }

  /** A vector of independent standard normal values carried to the parameters' covariance. */
  double[] scatter(double[] standard) {
    double[] x = new double[standard.length];
    for (int b = 0; b < factors.length; b++) {
      int[] members = blocks.members(b);
      double[] own = new double[members.length];
      for (int i = 0; i < own.length; i++) {
        own[i] = standard[members[i]];
      }
      put(b, upper(b, own), x);
    }
    return x;
  }

  /** log det(X'WX). */
  double logDeterminant() {
    double sum = 0;
    for (int b = 0; b < factors.length; b++) {
      for (int i = 0; i < factors[b].length; i++) {
        sum += Math.log(factors[b][i][i]) - Math.log(scale[blocks.members(b)[i]]);
      }
    }
    return 2 * sum;
  }

  private void put(int b, double[] own, double[] all) {
    int[] members = blocks.members(b);
    for (int i = 0; i < own.length; i++) {
      all[members[i]] = own[i];
    }
  }

  private double[] lower(int b, double[] right) {
    double[][] factor = factors[b];
    int[] members = blocks.members(b);
    double[] x = new double[members.length];
    for (int i = 0; i < x.length; i++) {
      double sum = right[members[i]] * scale[members[i]];
      for (int k = 0; k < i; k++) {
        sum -= factor[i][k] * x[k];
      }
      x[i] = sum / factor[i][i];
    }
    return x;
  }

  private double[] upper(int b, double[] x) {
    double[][] factor = factors[b];
    int[] members = blocks.members(b);
    for (int i = x.length - 1; i >= 0; i--) {
      double sum = x[i];
      for (int k = i + 1; k < x.length; k++) {
        sum -= factor[k][i] * x[k];
      }
      x[i] = sum / factor[i][i];
    }
    for (int i = 0; i < x.length; i++) {
      x[i] *= scale[members[i]];
    }
    return x;
  }
}
