package gapwise.decision.option;

import gapwise.answer.Answers;
import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The averages of separate groups against a difference that somebody named as one that matters. */
public final class OfSeparateGroups {
  private OfSeparateGroups() {}

  /** Every pair of methods of every column with such a difference, in order. */
  public static List<PairApart> of(Answers answers, OptionTable table) {
    List<PairApart> pairs = new ArrayList<>();
    for (Column column : table.columns()) {
      if (column.matters().isPresent()) {
        pairs.addAll(of(Averages.of(answers, table, column), table, column));
      }
    }
    return pairs;
  }

  private static List<PairApart> of(
      Map<Method, Distribution> averages, OptionTable table, Column column) {
    List<Method> methods =
        table.options().stream().map(Option::method).filter(averages::containsKey).toList();
    List<PairApart> pairs = new ArrayList<>();
    for (int i = 0; i < methods.size(); i++) {
      for (int j = i + 1; j < methods.size(); j++) {
        pairs.add(
            new PairApart(
                column,
                methods.get(i),
                methods.get(j),
                Chances.of(
                    averages.get(methods.get(i)),
                    averages.get(methods.get(j)),
                    column.matters().getAsDouble())));
      }
    }
    return pairs;
  }
}
