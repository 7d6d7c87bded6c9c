package gapwise.synthesis.network.exact;

import gapwise.budget.Work;
import gapwise.synthesis.network.exact.GivenTotal.Window;

/**
 * Arms added up: for each sum of events of some arms, less their modes, the mass of all tables with
 * that sum, and the first and second moments of each arm over them.
 *
 * @param low the first sum
 * @param mass one a sum
 * @param first an array as {@code mass} for each arm
 * @param second an array for each two arms, the first of which is not after the other
 */
record ArmSums(int low, double[] mass, double[][] first, double[][][] second) {
  /** One arm. */
  static ArmSums first(Window window) {
    double[] terms = window.terms();
    double[] times = new double[terms.length];
    double[] squares = new double[terms.length];
    for (int i = 0; i < terms.length; i++) {
      int x = window.low() + i;
      times[i] = x * terms[i];
      squares[i] = x * times[i];
    }
    return new ArmSums(window.low(), terms, new double[][] {times}, new double[][][] {{squares}});
  }

  /** One arm more. */
  ArmSums with(Window window) {
    int sums = mass.length + window.terms().length - 1;
    return joined(low + window.low(), sums, window);
  }

  /** One arm more, at one sum only. */
  ArmSums at(int sum, Window window) {
    return joined(sum, 1, window);
  }

  private ArmSums joined(int from, int sums, Window window) {
    int arms = first.length;
    double[][] more = new double[arms + 1][];
    double[][][] squares = new double[arms + 1][arms + 1][];
    double[] total = folded(mass, from, sums, window);
    for (int i = 0; i < arms; i++) {
      more[i] = folded(first[i], from, sums, window);
      for (int j = i; j < arms; j++) {
        squares[i][j] = folded(second[i][j], from, sums, window);
        squares[j][i] = squares[i][j];
      }
    }
    // The new arm is what the others leave of the sum, and so are its moments.
    more[arms] = left(total, more, arms, from);
    for (int i = 0; i < arms; i++) {
      squares[i][arms] = left(more[i], squares[i], arms, from);
      squares[arms][i] = squares[i][arms];
    }
    squares[arms][arms] = left(more[arms], squares[arms], arms, from);
    return new ArmSums(from, total, more, squares);
  }

  /** For each sum: the sum times something, less some parts of it. */
  private static double[] left(double[] whole, double[][] parts, int count, int from) {
    double[] left = new double[whole.length];
    for (int s = 0; s < left.length; s++) {
      left[s] = (from + s) * whole[s];
      for (int i = 0; i < count; i++) {
        left[s] -= parts[i][s];
      }
    }
    return left;
  }

  private double[] folded(double[] values, int from, int sums, Window window) {
    double[] terms = window.terms();
    double[] folded = new double[sums];
    int shift = from - low - window.low();
    for (int s = 0; s < sums; s++) {
      Work.check();
      int at = s + shift;
      double sum = 0;
      int last = Math.min(values.length - 1, at);
      for (int i = Math.max(0, at - terms.length + 1); i <= last; i++) {
        sum += values[i] * terms[at - i];
      }
      folded[s] = sum;
    }
    return folded;
  }
}
