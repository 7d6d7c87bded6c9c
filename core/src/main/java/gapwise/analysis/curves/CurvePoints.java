package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import gapwise.synthesis.survival.DigitisedCurve;
import gapwise.synthesis.survival.DigitisedCurve.Point;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** The points of the curves of a {@link CurvePlan}, as a digitiser gives them. */
final class CurvePoints {
  /** How far a reading may rise, or pass 0 and 1, and still be taken for a slip of the pointer. */
  private static final double SLIP = 0.02;

  /** Shares above this are percentages; common practice, no source. */
  private static final double PERCENT_ABOVE = 1.5;

  private final CurvePlan plan;
  private final DataTable table;
  private final Problems problems;
  private final List<Result.Warning> warnings;
  private final Columns columns;
  private final Map<String, Trace> traces = new LinkedHashMap<>();

  /** One curve while it is read. */
  private static final class Trace {
    final List<Point> points = new ArrayList<>();
    int levelled;
    boolean wrong;

    Optional<Point> last() {
      return points.isEmpty() ? Optional.empty() : Optional.of(points.get(points.size() - 1));
    }
  }

  CurvePoints(CurvePlan plan, DataTable table, Problems problems, List<Result.Warning> warnings) {
    this.plan = plan;
    this.table = table;
    this.problems = problems;
    this.warnings = warnings;
    this.columns =
        Columns.resolve(
            plan.head().named(),
            table,
            List.of("group", "time", "survival"),
            plan.groups().size() > 1
                ? List.of("group", "time", "survival")
                : List.of("time", "survival"),
            problems);
  }

  /** The curve of each group; those with problems are left out. */
  Map<String, DigitisedCurve> read() {
    if (!problems.isEmpty() || isPercent()) {
      return Map.of();
    }
    plan.groups().keySet().forEach(group -> traces.put(group, new Trace()));
    CurveRow rows = new CurveRow(columns, plan.groups().keySet(), "", problems);
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      Optional<String> group = rows.group(row, reported);
      OptionalDouble time = rows.time(reported);
      OptionalDouble share = rows.value(reported, "survival");
      reported.lacking().ifPresent(warnings::add);
      if (group.isPresent() && time.isPresent() && share.isPresent()) {
        double survival = plan.rising() ? 1 - share.getAsDouble() : share.getAsDouble();
        add(
            Objects.requireNonNull(traces.get(group.get())),
            reported,
            time.getAsDouble(),
            survival,
            share.getAsDouble());
      }
    }
    return curves();
  }

  private Map<String, DigitisedCurve> curves() {
    Map<String, DigitisedCurve> curves = new LinkedHashMap<>();
    traces.forEach(
        (group, trace) -> {
          if (trace.points.isEmpty() && !trace.wrong) {
            problems.add(
                "groups." + group,
                "no-points",
                "the table holds no point of this curve; correct the name or add its rows");
          } else if (!trace.wrong) {
            curves.put(group, DigitisedCurve.of(trace.points));
          }
          if (trace.levelled > 0) {
            warnings.add(
                Result.Warning.of(
                    "reading-levelled",
                    say(
                        "analysis.reading-levelled",
                        Map.of(
                            "points",
                            String.valueOf(trace.levelled),
                            "curve",
                            group,
                            "most",
                            String.valueOf(SLIP))),
                    group));
          }
        });
    return curves;
  }

  private boolean isPercent() {
    double largest = 0;
    for (DataTable.Row row : table.rows()) {
      largest = Math.max(largest, row.number(columns.column("survival")).orElse(0));
    }
    if (largest <= PERCENT_ABOVE) {
      return false;
    }
    problems.add(
        "column " + columns.column("survival"),
        "percent-survival",
        "found values up to "
            + largest
            + ", expected shares from 0 to 1; if these are percentages, divide them by 100");
    return true;
  }

  private void add(Trace trace, ReportedRow row, double time, double survival, double share) {
    if (survival < -SLIP || survival > 1 + SLIP) {
      trace.wrong = true;
      row.wrong(
          "survival",
          "outside-zero-to-one",
          "found " + share + ", expected a share from 0 to 1; correct the reading");
      return;
    }
    double before = trace.last().map(Point::survival).orElse(1.0);
    if (trace.last().isPresent() && time < trace.last().get().time()) {
      trace.wrong = true;
      row.wrong(
          "time",
          "times-not-sorted",
          "found "
              + time
              + " after "
              + trace.last().get().time()
              + "; put the points of each curve in the order of time");
      return;
    }
    if (survival > before + SLIP) {
      if (!trace.wrong) {
        row.wrong("survival", "curve-goes-back", goesBack(share, before));
      }
      trace.wrong = true;
      return;
    }
    double level = Math.max(0, Math.min(survival, before));
    trace.levelled += level == survival ? 0 : 1;
    trace.points.add(new Point(time, level));
  }

  private String goesBack(double share, double before) {
    return plan.rising()
        ? "found "
            + share
            + " after "
            + (1 - before)
            + ", but a share with the event can only rise; correct the reading, or, if the curve"
            + " shows those still without the event, leave out \"as\": \"cumulative-events\""
        : "found "
            + share
            + " after "
            + before
            + ", but survival can only fall; correct the reading, or, if the curve shows those"
            + " with the event, add \"as\": \"cumulative-events\"";
  }
}
