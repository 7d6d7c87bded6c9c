package gapwise.server.answer;

import gapwise.analysis.Result;
import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.effect.ProportionInterval;
import gapwise.evidence.Method;
import gapwise.figure.Estimate;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** An answer by method, each with its rows in order of missing bone, shortest first. */
public final class Blocks {
  private static final double LEVEL = 0.95;

  private Blocks() {}

  /**
   * One row with what the result says of it.
   *
   * @param row the row
   * @param cells its numbers by role
   * @param study its place in the result
   */
  record Line(SelectedRow row, Map<String, String> cells, Result.Study study) {}

  /**
   * One method.
   *
   * @param summary its pooled value; empty where there is none
   */
  record Block(
      Method method,
      List<Line> lines,
      Optional<Result.Summary> summary,
      Result.Heterogeneity heterogeneity) {
    List<SelectedRow> rows() {
      return lines.stream().map(Line::row).toList();
    }

    /** The one row with a value; empty where there are several or none. */
    Optional<Line> alone() {
      List<Line> valued = lines.stream().filter(line -> line.study().shown().isPresent()).toList();
      return valued.size() == 1 ? Optional.of(valued.get(0)) : Optional.empty();
    }

    /** Rows that entered the pooled value. */
    List<SelectedRow> pooled() {
      return lines.stream()
          .filter(line -> line.study().weightPercent().isPresent())
          .map(Line::row)
          .toList();
    }
  }

  static List<Block> of(Answer answer, Result result) {
    List<Line> lines = lines(answer, result);
    List<Block> blocks = new ArrayList<>();
    for (Method method : Method.vocabulary().all()) {
      List<Line> own =
          lines.stream()
              .filter(line -> line.row().arm().method().principal().equals(method))
              .sorted(Comparator.comparingDouble(Blocks::length))
              .toList();
      if (!own.isEmpty()) {
        blocks.add(block(method, own, result));
      }
    }
    return blocks;
  }

  private static Block block(Method method, List<Line> lines, Result result) {
    if (result.subgroups().isEmpty()) {
      return new Block(method, lines, result.summary(), result.heterogeneity().orElse(NOT_KNOWN));
    }
    Optional<Result.Subgroup> own =
        result.subgroups().get().stream()
            .filter(group -> group.level().equals(method.code()))
            .findFirst();
    return new Block(
        method,
        lines,
        own.flatMap(Result.Subgroup::summary),
        own.map(Result.Subgroup::heterogeneity).orElse(NOT_KNOWN));
  }

  private static final Result.Heterogeneity NOT_KNOWN =
      new Result.Heterogeneity(
          OptionalDouble.empty(),
          OptionalInt.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());

  /** The result has one entry a row, in the order of the rows. */
  private static List<Line> lines(Answer answer, Result result) {
    List<PlanRows.Line> rows =
        PlanRows.of(answer.selection(), answer.measure().orElseThrow()).lines();
    List<Result.Study> studies = result.studies().orElse(List.of());
    if (rows.size() != studies.size()) {
      throw new IllegalStateException(
          rows.size() + " rows were selected, yet the result tells of " + studies.size());
    }
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      lines.add(new Line(rows.get(i).row(), rows.get(i).cells(), studies.get(i)));
    }
    return lines;
  }

  private static double length(Line line) {
    return line.row()
        .defect()
        .map(defect -> defect.length().centreCentimetres())
        .filter(OptionalDouble::isPresent)
        .map(OptionalDouble::getAsDouble)
        .orElse(Double.MAX_VALUE);
  }

  /**
   * What one row shows. A share of patients stands with its exact interval (Clopper and Pearson,
   * Biometrika 1934;26:404), so that 18 of 18 is 100 of 100 and not a corrected number; a mean as
   * it was pooled.
   */
  static Estimate estimate(Answer answer, Line line) {
    if (answer.measure().filter("proportion"::equals).isEmpty()) {
      Result.Estimate shown = line.study().shown().orElseThrow();
      return Estimate.of(shown.estimate(), shown.lower(), shown.upper());
    }
    double events = Double.parseDouble(line.cells().get("events"));
    double total = Double.parseDouble(line.cells().get("total"));
    Interval exact = ProportionInterval.CLOPPER_PEARSON.of(new ArmCounts(events, total), LEVEL);
    return Estimate.of(events / total, exact.lower(), exact.upper());
  }

  /** The sentences of an answer, one method after another. */
  public static List<Told> told(Answer answer, Result result) {
    return of(answer, result).stream()
        .map(
            block ->
                Told.of(
                    answer.question().outcome(),
                    block.method(),
                    block.summary().isPresent() ? block.pooled() : block.rows(),
                    block.summary(),
                    block.heterogeneity(),
                    block.alone().map(line -> estimate(answer, line))))
        .toList();
  }
}
