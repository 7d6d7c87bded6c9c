package gapwise.decision.weighing;

import gapwise.budget.Work;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Outcomes turned into values, and values with weights into ranks.
 *
 * @param criteria ranges
 * @param draws outcomes
 * @param alternatives how many there are
 */
record Scale(List<Criterion> criteria, Draws draws, int alternatives) {
  /** What each alternative is worth in one draw, from 0 to 1. */
  double[] worth(int draw, double[] weights) {
    double[] worth = new double[alternatives];
    for (int a = 0; a < alternatives; a++) {
      for (int c = 0; c < weights.length; c++) {
        worth[a] += weights[c] * criteria.get(c).value(draws.outcome(draw, a, c));
      }
    }
    return worth;
  }

  /**
   * The part of each rank that an alternative has: 1 of one rank, or with others of the same worth
   * an equal part of each of the ranks they take together.
   *
   * @return by alternative, then by rank from the best
   */
  static double[][] ranks(double[] worth) {
    double[][] parts = new double[worth.length][worth.length];
    for (int a = 0; a < worth.length; a++) {
      int better = 0;
      int alike = 0;
      for (double other : worth) {
        better += other > worth[a] ? 1 : 0;
        alike += other == worth[a] ? 1 : 0;
      }
      Arrays.fill(parts[a], better, better + alike, 1.0 / alike);
    }
    return parts;
  }

  /** The part of the first rank that one alternative has; see {@link #ranks}. */
  static double first(double[] worth, int alternative) {
    int alike = 0;
    for (double other : worth) {
      if (other > worth[alternative]) {
        return 0;
      }
      alike += other == worth[alternative] ? 1 : 0;
    }
    return 1.0 / alike;
  }

  /**
   * By criterion, how many of the outcomes used lay outside its range; those with none left out.
   */
  Map<String, Long> cuts(int n) {
    Map<String, Long> cuts = new LinkedHashMap<>();
    int used = draws.different() == Integer.MAX_VALUE ? 1 : Math.min(n, draws.different());
    for (int c = 0; c < criteria.size(); c++) {
      long cut = 0;
      for (int i = 0; i < used; i++) {
        Work.check();
        for (int a = 0; a < alternatives; a++) {
          cut += criteria.get(c).cuts(draws.outcome(i, a, c)) ? 1 : 0;
        }
      }
      if (cut > 0) {
        cuts.put(criteria.get(c).code(), cut);
      }
    }
    return cuts;
  }
}
