package gapwise.synthesis.agreement;

import gapwise.budget.Work;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Agreement of two raters beyond chance, with weights for how far apart they are: Cohen, Educ
 * Psychol Meas 1960;20:37 and Psychol Bull 1968;70:213; standard errors of Fleiss, Cohen and
 * Everitt, Psychol Bull 1969;72:323, equations 9 and 13.
 *
 * <p>Only pairs that occur are held, not the table, most of whose cells are empty where categories
 * are many. Time grows with the square of the categories that were used, memory with their number.
 *
 * @param estimate at most 1
 * @param standardError for intervals, large sample
 * @param standardErrorUnderZero for a test of no agreement beyond chance
 */
public record Kappa(double estimate, double standardError, double standardErrorUnderZero) {
  /** A variance below this share of the squares it is a difference of is rounding. */
  private static final double ROUNDING = 1e-12;

  /** How far two categories agree: 1 on the diagonal. */
  @FunctionalInterface
  public interface Weights {
    /** The weight for the places of two categories, from 0. */
    double of(int first, int second);
  }

  /**
   * Cases to which the raters gave two categories.
   *
   * @param first place of rater 1's category, from 0
   * @param second place of rater 2's
   * @param count of the cases, at least 0
   */
  public record Pair(int first, int second, double count) {}

  /**
   * Kappa of a table.
   *
   * @param categories how many there are
   * @param pairs the cells that are not empty, each once
   * @param weights of agreement for each pair of categories
   * @return empty if chance alone gives full agreement, as when both use one category only
   */
  public static Optional<Kappa> of(int categories, List<Pair> pairs, Weights weights) {
    double total = pairs.stream().mapToDouble(Pair::count).sum();
    if (!(total > 0)) {
      return Optional.empty();
    }
    double[] rows = new double[categories];
    double[] columns = new double[categories];
    double observed = 0;
    for (Pair pair : pairs) {
      rows[pair.first()] += pair.count() / total;
      columns[pair.second()] += pair.count() / total;
      observed += weights.of(pair.first(), pair.second()) * (pair.count() / total);
    }
    int[] usedRows = used(rows);
    int[] usedColumns = used(columns);
    double expected = 0;
    double[] rowMeans = new double[categories];
    double[] columnMeans = new double[categories];
    for (int i : usedRows) {
      Work.check();
      for (int j : usedColumns) {
        double w = weights.of(i, j);
        rowMeans[i] += w * columns[j];
        columnMeans[j] += w * rows[i];
      }
      // Row by row, so that millions of small terms are not added to one sum.
      expected += rows[i] * rowMeans[i];
    }
    if (expected >= 1) {
      return Optional.empty();
    }
    double spread = 0;
    for (Pair pair : pairs) {
      double means = rowMeans[pair.first()] + columnMeans[pair.second()];
      double w = weights.of(pair.first(), pair.second());
      double away = w * (1 - expected) - means * (1 - observed);
      spread += pair.count() / total * away * away;
    }
    double spreadUnderZero = 0;
    for (int i : usedRows) {
      Work.check();
      double ofRow = 0;
      for (int j : usedColumns) {
        double away = weights.of(i, j) - rowMeans[i] - columnMeans[j];
        ofRow += columns[j] * away * away;
      }
      spreadUnderZero += rows[i] * ofRow;
    }
    double centre = observed * expected - 2 * expected + observed;
    double beyond = 1 - expected;
    return Optional.of(
        new Kappa(
            (observed - expected) / beyond,
            Math.sqrt(difference(spread, centre * centre) / total) / (beyond * beyond),
            Math.sqrt(difference(spreadUnderZero, expected * expected) / total) / beyond));
  }

  private static int[] used(double[] shares) {
    int[] places = new int[shares.length];
    int count = 0;
    for (int i = 0; i < shares.length; i++) {
      if (shares[i] > 0) {
        places[count++] = i;
      }
    }
    return Arrays.copyOf(places, count);
  }

  /** How far one share lies above another; 0 where that is rounding. */
  private static double difference(double one, double other) {
    return one - other > ROUNDING * one ? one - other : 0;
  }
}
