package gapwise.synthesis.regression;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;

/**
 * What the mean of each study is a sum of: a row for each study, a named column for each term.
 * Immutable.
 */
public final class DesignMatrix {
  /** The term of the column of ones. */
  public static final String INTERCEPT = "intercept";

  /**
   * A column is called dependent if all but this share of its length lies in the columns before it.
   * Rounding leaves some 1e-15; ten powers of a decimal number, as unlike each other as a real
   * regression's columns ever were (the data set Filip of NIST), still leave 1e-9.
   */
  private static final double DEPENDENT = 1e-13;

  private final List<String> terms;
  private final double[] values;
  private final int rows;

  private DesignMatrix(List<String> terms, double[] values, int rows) {
    this.terms = List.copyOf(terms);
    this.values = values;
    this.rows = rows;
  }

  /**
   * A design.
   *
   * @param terms names of the columns, no two alike, at least one
   * @param rows one a study, each as long as there are terms, of finite numbers
   * @throws IllegalArgumentException if sizes do not fit or a number is not finite
   */
  public static DesignMatrix of(List<String> terms, List<double[]> rows) {
    if (terms.isEmpty() || new HashSet<>(terms).size() < terms.size()) {
      throw new IllegalArgumentException("terms must be some and differ, were " + terms);
    }
    double[] values = new double[rows.size() * terms.size()];
    int at = 0;
    for (double[] row : rows) {
      if (row.length != terms.size()) {
        throw new IllegalArgumentException(row.length + " numbers for the terms " + terms);
      }
      for (double value : row) {
        if (!Double.isFinite(value)) {
          throw new IllegalArgumentException("a number of the design is " + value);
        }
        values[at++] = value;
      }
    }
    return new DesignMatrix(terms, values, rows.size());
  }

  /** One mean for all studies. */
  public static DesignMatrix ofOneMean(int studies) {
    double[] ones = new double[studies];
    Arrays.fill(ones, 1);
    return new DesignMatrix(List.of(INTERCEPT), ones, studies);
  }

  /** Number of studies, k. */
  public int rows() {
    return rows;
  }

  /** Number of terms, p. */
  public int columns() {
    return terms.size();
  }

  /** Names of the columns. */
  public List<String> terms() {
    return terms;
  }

  /** One number. */
  public double value(int row, int column) {
    return values[row * terms.size() + column];
  }

  /** The numbers of one study; a copy. */
  public double[] row(int row) {
    double[] copy = new double[terms.size()];
    System.arraycopy(values, row * terms.size(), copy, 0, copy.length);
    return copy;
  }

  /** All numbers, row after row; a copy. */
  double[] values() {
    return values.clone();
  }

  /** The studies at some places, in the order of the list. */
  public DesignMatrix at(List<Integer> places) {
    return of(terms, places.stream().map(this::row).toList());
  }

  /** The design without some of its terms. */
  public DesignMatrix without(List<String> others) {
    List<Integer> kept = new ArrayList<>();
    for (int j = 0; j < columns(); j++) {
      if (!others.contains(terms.get(j))) {
        kept.add(j);
      }
    }
    double[] left = new double[rows * kept.size()];
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < kept.size(); j++) {
        left[i * kept.size() + j] = value(i, kept.get(j));
      }
    }
    return new DesignMatrix(kept.stream().map(terms::get).toList(), left, rows);
  }

  /**
   * The same space of means with one sum of coefficients as the coefficient of a column of its own:
   * with b* = b but b*_j the sum c'b, the column j is divided by c_j and every other one has
   * c_i/c_j times column j taken off.
   *
   * @param sum a factor for each term, not all 0
   * @param j the column, with a factor that is not 0
   */
  DesignMatrix turned(double[] sum, int j) {
    double[] turned = values.clone();
    for (int i = 0; i < rows; i++) {
      double own = value(i, j);
      for (int k = 0; k < sum.length; k++) {
        turned[i * sum.length + k] = k == j ? own / sum[j] : value(i, k) - own * sum[k] / sum[j];
      }
    }
    return new DesignMatrix(terms, turned, rows);
  }

  /**
   * Terms whose column is a sum of multiples of columns before it (or all 0), so that no data could
   * tell their coefficient. Each column is made orthogonal to the ones before it, twice over, so
   * that what is left is known to its own digits.
   */
  public List<String> dependentTerms() {
    List<double[]> directions = new ArrayList<>();
    List<String> dependent = new ArrayList<>();
    for (int j = 0; j < columns(); j++) {
      Work.check();
      double[] column = new double[rows];
      double largest = 0;
      for (int i = 0; i < rows; i++) {
        column[i] = value(i, j);
        largest = Math.max(largest, Math.abs(column[i]));
      }
      if (largest > 0) {
        scale(column, 1 / largest);
      }
      double before = length(column);
      for (int pass = 0; pass < 2; pass++) {
        for (double[] direction : directions) {
          remove(column, direction);
        }
      }
      double left = length(column);
      if (left <= DEPENDENT * before) {
        dependent.add(terms.get(j));
      } else {
        scale(column, 1 / left);
        directions.add(column);
      }
    }
    return dependent;
  }

  private static void scale(double[] column, double factor) {
    for (int i = 0; i < column.length; i++) {
      column[i] *= factor;
    }
  }

  private static double length(double[] column) {
    double sum = 0;
    for (double entry : column) {
      sum += entry * entry;
    }
    return Math.sqrt(sum);
  }

  private static void remove(double[] column, double[] direction) {
    double dot = 0;
    for (int i = 0; i < column.length; i++) {
      dot += column[i] * direction[i];
    }
    for (int i = 0; i < column.length; i++) {
      column[i] -= dot * direction[i];
    }
  }
}
