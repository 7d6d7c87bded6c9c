package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Work;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.pooling.PooledValue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pooled value as studies are added in the order of a column. */
public record CumulativePart(String column) {

  /**
   * Works it out; empty where it cannot be told.
   *
   * @param warnings takes what a reader must know
   * @throws WrongInputException if the data have no such column
   */
  public <D extends StudyData> Optional<List<InfluenceResult.Cumulative>> of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    if (synthesis.pooler().size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(synthesis.pooler().size()));
      return Optional.empty();
    }
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    List<Integer> order = order(synthesis, pooled, warnings);
    boolean spread = synthesis.plan().model().hasSpread();
    List<InfluenceResult.Cumulative> steps = new ArrayList<>();
    List<String> withoutWidth = new ArrayList<>();
    for (int n = 1; n <= order.size(); n++) {
      Work.check();
      Refit some =
          new Refit(
              PooledValue.of(synthesis.pooler().withoutFurther(order.subList(0, n)), n), spread);
      String added = pooled.get(order.get(n - 1)).label();
      if (some.isWithoutWidth()) {
        withoutWidth.add(say("analysis.up-to", Map.of("study", added)));
      }
      steps.add(
          new InfluenceResult.Cumulative(
              added,
              some.estimate(),
              some.standardError(),
              some.limit(Interval::lower),
              some.limit(Interval::upper),
              some.tauSquared()));
    }
    StudyWarnings.entriesWithoutWidth(withoutWidth).ifPresent(warnings::add);
    return Optional.of(steps);
  }

  private <D extends StudyData> List<Integer> order(
      Synthesis<D> synthesis, List<Studies.Entry<D>> pooled, List<Result.Warning> warnings) {
    if (!synthesis.table().columns().contains(column)) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "cumulativeBy",
                  "unknown-column",
                  "there is no column '"
                      + column
                      + "'; the data have "
                      + synthesis.table().columns())));
    }
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < pooled.size(); i++) {
      if (pooled.get(i).row().text(column).isEmpty()) {
        warnings.add(
            pooled
                .get(i)
                .row()
                .warning(
                    "missing-value",
                    say(
                        "analysis.not-in-the-order",
                        Map.of("row", pooled.get(i).row().place(), "column", column)),
                    pooled.get(i).label()));
      } else {
        order.add(i);
      }
    }
    order.sort(Comparator.comparing(i -> pooled.get(i).row(), byValue(pooled)));
    return order;
  }

  /** By number if every value is one, else by text. */
  private <D extends StudyData> Comparator<DataTable.Row> byValue(List<Studies.Entry<D>> pooled) {
    boolean numbers =
        pooled.stream()
            .map(Studies.Entry::row)
            .filter(row -> !row.text(column).isEmpty())
            .allMatch(row -> row.number(column).isPresent());
    return numbers
        ? Comparator.comparingDouble(row -> row.number(column).orElseThrow())
        : Comparator.comparing(row -> row.text(column));
  }
}
