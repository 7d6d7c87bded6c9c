package gapwise.analysis.moderators;

import gapwise.analysis.rows.RowValue;
import gapwise.synthesis.regression.RestrictedCubicSpline;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What one entry of a plan's moderators adds to the design: some terms, and their values for a row.
 * Levels and knots are settled when it is made. Immutable.
 */
sealed interface Moderator {
  /** Names of the terms. */
  List<String> terms();

  /**
   * Their values.
   *
   * @param cells a value for each column, none blank, numbers where numbers are expected
   */
  double[] values(Map<String, RowValue> cells);

  /** The columns it reads. */
  List<String> columns();

  /** Whether a row, none of whose cells is blank, has numbers and levels that it knows. */
  default boolean takes(Map<String, RowValue> cells) {
    return columns().stream().allMatch(column -> value(cells, column).number().isPresent());
  }

  /**
   * A column of numbers.
   *
   * @param centre is taken off
   */
  record Numbers(String column, double centre) implements Moderator {
    @Override
    public List<String> terms() {
      return List.of(column);
    }

    @Override
    public double[] values(Map<String, RowValue> cells) {
      return new double[] {number(cells, column) - centre};
    }

    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /**
   * A column of categories, one term of zeros and ones for each level but the first. A single level
   * has a term of ones, so that it is found to say nothing as any other constant column is.
   *
   * @param levels the reference level first
   */
  record Categories(String column, List<String> levels) implements Moderator {
    public Categories {
      levels = List.copyOf(levels);
    }

    @Override
    public boolean takes(Map<String, RowValue> cells) {
      return levels.contains(value(cells, column).text());
    }

    private List<String> told() {
      return levels.size() > 1 ? levels.subList(1, levels.size()) : levels;
    }

    @Override
    public List<String> terms() {
      return told().stream().map(level -> column + "=" + level).toList();
    }

    @Override
    public double[] values(Map<String, RowValue> cells) {
      double[] values = new double[told().size()];
      int level = told().indexOf(value(cells, column).text());
      if (level >= 0) {
        values[level] = 1;
      }
      return values;
    }

    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /**
   * A column of numbers as a curve.
   *
   * @param spline straight beyond its outer knots
   */
  record Curve(String column, RestrictedCubicSpline spline) implements Moderator {
    @Override
    public List<String> terms() {
      List<String> terms = new ArrayList<>();
      for (int i = 0; i < spline.terms(); i++) {
        terms.add(column + "'".repeat(i));
      }
      return terms;
    }

    @Override
    public double[] values(Map<String, RowValue> cells) {
      return spline.at(number(cells, column));
    }

    @Override
    public List<String> columns() {
      return List.of(column);
    }
  }

  /** Each term of one times each term of another. */
  record Product(Moderator first, Moderator second) implements Moderator {
    @Override
    public boolean takes(Map<String, RowValue> cells) {
      return first.takes(cells) && second.takes(cells);
    }

    @Override
    public List<String> terms() {
      List<String> terms = new ArrayList<>();
      for (String one : first.terms()) {
        for (String other : second.terms()) {
          terms.add(one + "*" + other);
        }
      }
      return terms;
    }

    @Override
    public double[] values(Map<String, RowValue> cells) {
      double[] left = first.values(cells);
      double[] right = second.values(cells);
      double[] values = new double[left.length * right.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = left[i / right.length] * right[i % right.length];
      }
      return values;
    }

    @Override
    public List<String> columns() {
      List<String> columns = new ArrayList<>(first.columns());
      second.columns().stream().filter(one -> !columns.contains(one)).forEach(columns::add);
      return columns;
    }
  }

  private static double number(Map<String, RowValue> cells, String column) {
    return value(cells, column).number().orElseThrow();
  }

  private static RowValue value(Map<String, RowValue> cells, String column) {
    return Objects.requireNonNull(cells.get(column), column);
  }
}
