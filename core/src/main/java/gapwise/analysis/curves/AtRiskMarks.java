package gapwise.analysis.curves;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import gapwise.synthesis.survival.NumbersAtRisk;
import gapwise.synthesis.survival.NumbersAtRisk.Mark;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** The numbers at risk of a {@link CurvePlan}. */
final class AtRiskMarks {
  private static final String TABLE = "numbersAtRisk, ";

  private final CurvePlan plan;
  private final Problems problems;
  private final List<Result.Warning> warnings;

  AtRiskMarks(CurvePlan plan, Problems problems, List<Result.Warning> warnings) {
    this.plan = plan;
    this.problems = problems;
    this.warnings = warnings;
  }

  /** Of each group, all patients at time 0 and what is known later. */
  Map<String, NumbersAtRisk> read(Optional<DataTable> table) {
    Map<String, List<Mark>> marks = new LinkedHashMap<>();
    plan.groups().keySet().forEach(group -> marks.put(group, new ArrayList<>()));
    table.ifPresent(rows -> read(rows, marks));
    Map<String, NumbersAtRisk> numbers = new LinkedHashMap<>();
    if (problems.isEmpty()) {
      plan.groups()
          .forEach(
              (group, reported) ->
                  numbers.put(group, NumbersAtRisk.of(reported.patients(), of(group, marks))));
    }
    return numbers;
  }

  private void read(DataTable table, Map<String, List<Mark>> marks) {
    List<String> roles = List.of("group", "time", "atRisk");
    Columns columns =
        Columns.resolve(
            new Columns.Named("numbersAtRisk.columns", plan.atRiskColumns(), "numbersAtRisk"),
            table,
            roles,
            plan.groups().size() > 1 ? roles : List.of("time", "atRisk"),
            problems);
    if (!problems.isEmpty()) {
      return;
    }
    CurveRow rows = new CurveRow(columns, plan.groups().keySet(), TABLE, problems);
    for (DataTable.Row row : table.rows()) {
      Problems own = new Problems();
      ReportedRow reported = new ReportedRow(columns, row, own);
      Optional<String> group = rows.group(row, reported);
      OptionalDouble time = rows.time(reported);
      OptionalDouble atRisk = rows.value(reported, "atRisk");
      if (own.isEmpty() && group.isPresent() && time.isPresent() && atRisk.isPresent()) {
        add(
            group.get(),
            of(group.get(), marks),
            reported,
            time.getAsDouble(),
            atRisk.getAsDouble());
      }
      reported.lacking().ifPresent(warnings::add);
      own.list().forEach(p -> problems.add(TABLE + p.where(), p.code(), p.message()));
    }
  }

  /** What is kept of a group of the plan. */
  private static <V> V of(String group, Map<String, V> kept) {
    return Objects.requireNonNull(kept.get(group), group);
  }

  private void add(String group, List<Mark> marks, ReportedRow row, double time, double atRisk) {
    int all = of(group, plan.groups()).patients();
    Optional<Mark> last =
        marks.isEmpty() ? Optional.empty() : Optional.of(marks.get(marks.size() - 1));
    if (atRisk < 0 || atRisk != Math.rint(atRisk)) {
      row.wrong("atRisk", "not-a-count", "found " + atRisk + ", expected a whole number from 0 on");
    } else if (atRisk > all || (time == 0 && atRisk != all)) {
      row.wrong(
          "atRisk",
          "patients-differ",
          "found "
              + atRisk
              + ", but groups gives '"
              + group
              + "' "
              + all
              + " patients; correct one");
    } else if (last.isPresent() && time <= last.get().time()) {
      row.wrong(
          "time",
          "times-not-sorted",
          "found " + time + " after " + last.get().time() + "; each time once, in their order");
    } else if (last.isPresent() && atRisk > last.get().patients()) {
      row.wrong(
          "atRisk",
          "at-risk-rises",
          "found " + atRisk + " after " + last.get().patients() + ", but the number can only fall");
    } else {
      marks.add(new Mark(time, (int) atRisk));
    }
  }
}
