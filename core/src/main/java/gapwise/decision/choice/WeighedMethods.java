package gapwise.decision.choice;

import gapwise.decision.option.Column;
import gapwise.decision.option.OptionTable;
import gapwise.decision.weighing.Criterion;
import gapwise.decision.weighing.Weighed;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Methods weighed.
 *
 * @param table the table
 * @param asked how it was to be weighed
 * @param columns the outcomes, in the order of the criteria
 * @param methods the methods, in the order of the alternatives
 * @param weighed shares and wishes
 * @param means by method and outcome the mean of the draws, in the numbers that people read
 * @param leftOut methods that are left out, with the reasons
 * @param filled methods of which an outcome is certain, or anything within its range
 */
public record WeighedMethods(
    OptionTable table,
    WeighingAsked asked,
    List<Column> columns,
    List<Method> methods,
    Weighed weighed,
    List<List<Double>> means,
    List<Named> leftOut,
    List<Named> filled)
    implements WeighedTable {
  public WeighedMethods {
    Objects.requireNonNull(table, "table");
    Objects.requireNonNull(asked, "asked");
    columns = List.copyOf(columns);
    methods = List.copyOf(methods);
    Objects.requireNonNull(weighed, "weighed");
    means = List.copyOf(means);
    leftOut = List.copyOf(leftOut);
    filled = List.copyOf(filled);
  }

  /**
   * In which outcome a method stays furthest behind another, as parts of the range.
   *
   * @param outcome its place among the outcomes
   * @param ahead the place of the method that is furthest ahead there
   */
  public record Behind(int outcome, int ahead) {}

  /** What keeps a method from coming first; empty where it is behind in nothing. */
  public Optional<Behind> behind(int method) {
    Optional<Behind> worst = Optional.empty();
    double most = 0;
    for (int c = 0; c < columns.size(); c++) {
      Criterion criterion = weighed.criteria().get(c);
      double own = criterion.value(means.get(method).get(c));
      for (int other = 0; other < methods.size(); other++) {
        double less = criterion.value(means.get(other).get(c)) - own;
        if (less > most) {
          most = less;
          worst = Optional.of(new Behind(c, other));
        }
      }
    }
    return worst;
  }
}
