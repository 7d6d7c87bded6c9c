package gapwise.analysis;

import gapwise.budget.Work;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.pooling.PooledValue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The pooled value as studies are added in the order of a column. */
final class CumulativePart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return !column(plan).isEmpty();
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    if (synthesis.pooler().size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(synthesis.pooler().size()));
      return;
    }
    List<Studies.Entry<D>> pooled = synthesis.studies().pooled();
    List<Integer> order = order(synthesis, pooled, warnings);
    boolean random = synthesis.plan().hasSpread();
    List<InfluenceResult.Cumulative> steps = new ArrayList<>();
    for (int n = 1; n <= order.size(); n++) {
      Work.check();
      Refit some = new Refit(PooledValue.of(synthesis.pooler().at(order.subList(0, n)), n), random);
      steps.add(
          new InfluenceResult.Cumulative(
              pooled.get(order.get(n - 1)).label(),
              some.estimate(),
              some.standardError(),
              some.limit(Interval::lower),
              some.limit(Interval::upper),
              some.tauSquared()));
    }
    result.cumulative(steps);
  }

  private static String column(SynthesisPlan plan) {
    return plan.json().path("cumulativeBy").asText();
  }

  private static <D extends StudyData> List<Integer> order(
      Synthesis<D> synthesis, List<Studies.Entry<D>> pooled, List<Result.Warning> warnings) {
    String column = column(synthesis.plan());
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
            Result.Warning.of(
                "missing-value",
                pooled.get(i).row().place()
                    + " has no value in "
                    + column
                    + " and is left out of the cumulative order",
                pooled.get(i).label()));
      } else {
        order.add(i);
      }
    }
    order.sort(
        Comparator.comparing(i -> pooled.get(i).row().text(column), byValue(pooled, column)));
    return order;
  }

  /** By number if every value is one, else by text. */
  private static <D extends StudyData> Comparator<String> byValue(
      List<Studies.Entry<D>> pooled, String column) {
    boolean numbers =
        pooled.stream()
            .map(entry -> entry.row().text(column))
            .filter(text -> !text.isEmpty())
            .allMatch(text -> ReportedRow.parse(text).isPresent());
    return numbers
        ? Comparator.comparingDouble(text -> ReportedRow.parse(text).orElseThrow())
        : Comparator.naturalOrder();
  }
}
