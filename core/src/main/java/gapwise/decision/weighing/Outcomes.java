package gapwise.decision.weighing;

import gapwise.numeric.RandomValues;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * Outcomes held as columns of draws, one for each alternative and criterion. Columns may differ in
 * length and are gone through again and again. Immutable.
 */
public final class Outcomes implements Draws {
  private final List<List<double[]>> columns;
  private final int different;

  private Outcomes(List<List<double[]>> columns, int different) {
    this.columns = columns;
    this.different = different;
  }

  /**
   * Holds columns.
   *
   * @param columns for each alternative, in order, one column of draws for each criterion, in
   *     order; a single value for what is known
   * @throws IllegalArgumentException if a column is empty or alternatives differ in criteria
   */
  public static Outcomes of(List<List<double[]>> columns) {
    List<List<double[]>> held = new ArrayList<>();
    int different = Integer.MAX_VALUE;
    for (List<double[]> alternative : columns) {
      List<double[]> own = new ArrayList<>();
      for (double[] column : alternative) {
        if (column.length == 0) {
          throw new IllegalArgumentException("an outcome without a draw");
        }
        different = column.length > 1 ? Math.min(different, column.length) : different;
        own.add(column.clone());
      }
      if (!held.isEmpty() && own.size() != held.get(0).size()) {
        throw new IllegalArgumentException("alternatives differ in their number of criteria");
      }
      held.add(List.copyOf(own));
    }
    return new Outcomes(List.copyOf(held), different);
  }

  /**
   * A column for what is not known: every outcome of the criterion's range as likely.
   *
   * @param draws 1 or more
   */
  public static double[] unknown(Criterion criterion, int draws, long seed) {
    RandomValues random = RandomValues.ofSeed(seed);
    double[] column = new double[draws];
    Arrays.setAll(
        column, i -> criterion.worst() + random.uniform() * (criterion.best() - criterion.worst()));
    return column;
  }

  @Override
  public double outcome(int draw, int alternative, int criterion) {
    double[] column = Objects.requireNonNull(columns.get(alternative).get(criterion));
    return column[draw % column.length];
  }

  @Override
  public int different() {
    return different;
  }
}
