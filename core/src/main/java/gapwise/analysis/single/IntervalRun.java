package gapwise.analysis.single;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.ArmCounts;
import gapwise.effect.ArmRate;
import gapwise.effect.Interval;
import gapwise.effect.ProportionInterval;
import gapwise.effect.RateInterval;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The task {@code interval}. */
final class IntervalRun {
  private final IntervalPlan plan;
  private final DataTable table;
  private final Problems problems = new Problems();

  private IntervalRun(IntervalPlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
  }

  static Result of(IntervalPlan plan, DataTable table) {
    return new IntervalRun(plan, table).run();
  }

  private Result run() {
    boolean rate = plan.ofRates();
    String second = rate ? "personTime" : "total";
    Columns columns =
        Columns.resolve(
            plan.head().named(),
            table,
            List.of("events", second, "study"),
            List.of("events", second),
            problems);
    Work.require(
        Limit.ITEMS,
        (long) table.rows().size() * plan.methods().size(),
        "methods",
        "Every row is told by every method; ask for fewer methods, or give fewer rows.");
    List<IntervalsResult.Intervals> intervals = new ArrayList<>();
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    Set<String> labels = new TreeSet<>();
    double events = 0;
    double size = 0;
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      String label = columns.label(row);
      labels.add(label);
      Optional<IntervalsResult.Intervals> one =
          rate
              ? ArmRate.of(reported).map(r -> ofRate(Optional.of(label), r))
              : ArmCounts.of(reported).map(c -> ofCounts(Optional.of(label), c));
      if (one.isEmpty()) {
        reported.lacking().ifPresent(warnings::add);
        continue;
      }
      intervals.add(one.get());
      events += one.get().events();
      size += one.get().total().orElseGet(() -> one.get().personTime().orElseThrow());
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Optional<IntervalsResult.Intervals> pooled = Optional.empty();
    if (plan.pooledCounts() && !intervals.isEmpty()) {
      pooled =
          Optional.of(
              rate
                  ? ofRate(Optional.empty(), new ArmRate(events, size))
                  : ofCounts(Optional.empty(), new ArmCounts(events, size)));
    }
    boolean point =
        Stream.concat(intervals.stream(), pooled.stream())
            .flatMap(one -> one.methods().stream())
            .anyMatch(limits -> limits.lower() == limits.upper());
    if (point) {
      warnings.add(Result.Warning.of("zero-width-interval", say("analysis.wald-without-width")));
    }
    Result.Data data =
        new Result.Data(
            labels.size(),
            table.rows().size(),
            rate ? OptionalDouble.empty() : OptionalDouble.of(size),
            OptionalDouble.of(events),
            table.sha256());
    return new Result(plan.head().json(), data, new IntervalsResult(intervals, pooled), warnings);
  }

  private IntervalsResult.Intervals ofCounts(Optional<String> label, ArmCounts counts) {
    List<IntervalsResult.Limits> limits = new ArrayList<>();
    for (String method : plan.methods()) {
      limits.add(
          limits(
              method,
              ProportionInterval.valueOf(constant(method)).of(counts, plan.head().level())));
    }
    return new IntervalsResult.Intervals(
        label,
        counts.events(),
        OptionalDouble.of(counts.total()),
        OptionalDouble.empty(),
        counts.proportion(),
        limits);
  }

  private IntervalsResult.Intervals ofRate(Optional<String> label, ArmRate rate) {
    List<IntervalsResult.Limits> limits = new ArrayList<>();
    for (String method : plan.methods()) {
      limits.add(
          limits(method, RateInterval.valueOf(constant(method)).of(rate, plan.head().level())));
    }
    return new IntervalsResult.Intervals(
        label,
        rate.events(),
        OptionalDouble.empty(),
        OptionalDouble.of(rate.personTime()),
        rate.rate(),
        limits);
  }

  private static IntervalsResult.Limits limits(String method, Interval interval) {
    return new IntervalsResult.Limits(method, interval.lower(), interval.upper());
  }

  private static String constant(String method) {
    return method.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
