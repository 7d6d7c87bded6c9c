package gapwise.decision.option;

import gapwise.answer.Answers;
import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The averages of separate groups against a difference that somebody named as one that matters. */
public final class OfSeparateGroups {
  private OfSeparateGroups() {}

  /** Every pair of methods of a column, in order; none where it has no such difference. */
  public static List<PairApart> of(Answers answers, OptionTable table, Column column) {
    return column.matters().isEmpty()
        ? List.of()
        : of(Averages.of(answers, table, column), table, column);
  }

  private static List<PairApart> of(
      Map<Method, Distribution> averages, OptionTable table, Column column) {
    List<Known> known =
        table.options().stream()
            .map(Option::method)
            .flatMap(
                method ->
                    Optional.ofNullable(averages.get(method)).stream()
                        .map(average -> new Known(method, average)))
            .toList();
    List<PairApart> pairs = new ArrayList<>();
    for (int i = 0; i < known.size(); i++) {
      for (int j = i + 1; j < known.size(); j++) {
        pairs.add(
            new PairApart(
                column,
                known.get(i).method(),
                known.get(j).method(),
                Chances.of(
                    known.get(i).average(),
                    known.get(j).average(),
                    column.matters().getAsDouble())));
      }
    }
    return pairs;
  }

  private record Known(Method method, Distribution average) {}
}
