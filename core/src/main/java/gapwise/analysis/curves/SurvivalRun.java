package gapwise.analysis.curves;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.PatientTimes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The task {@code survival}: one patient a row. */
final class SurvivalRun {
  private static final Set<String> YES = Set.of("1", "true", "yes");
  private static final Set<String> NO = Set.of("0", "false", "no");

  private final SurvivalPlan plan;
  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings;

  /** Which curve a row belongs to. */
  private record Key(Optional<String> study, Optional<String> group) {}

  SurvivalRun(SurvivalPlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
    this.warnings = new ArrayList<>(table.warnings());
  }

  Result run() {
    Columns columns =
        Columns.resolve(
            plan.head().named(),
            table,
            List.of("study", "group", "time", "event"),
            plan.questions().compare().isPresent()
                ? List.of("group", "time", "event")
                : List.of("time", "event"),
            problems);
    Map<Key, List<PatientTime>> rows = new LinkedHashMap<>();
    if (problems.isEmpty()) {
      CurveRow reading = new CurveRow(columns, Set.of(), "", problems);
      table.rows().forEach(row -> read(row, columns, reading, rows));
      plan.questions().compare().ifPresent(asked -> known(asked, rows.keySet()));
    }
    if (problems.isEmpty() && rows.isEmpty()) {
      problems.add(
          "source", "no-rows", "no row has all that is needed; see the roles of this task");
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    List<CurveGroup> groups = new ArrayList<>();
    rows.forEach(
        (key, times) ->
            groups.add(
                CurveGroup.of(
                    key.group(), key.study(), PatientTimes.of(times), OptionalDouble.empty())));
    return new SurvivalAnswer(plan.questions(), groups, warnings).result(plan.head(), table);
  }

  private void known(SurvivalQuestions.Compare asked, Set<Key> keys) {
    List<String> groups = keys.stream().flatMap(key -> key.group().stream()).distinct().toList();
    for (String group : List.of(asked.group(), asked.against())) {
      if (!groups.contains(group)) {
        problems.add(
            group.equals(asked.group()) ? "compare.group" : "compare.against",
            "unknown-group",
            "no row is of the group '" + group + "'; the data have " + groups);
      }
    }
  }

  private void read(
      DataTable.Row row, Columns columns, CurveRow reading, Map<Key, List<PatientTime>> rows) {
    ReportedRow reported = new ReportedRow(columns, row, problems);
    int before = problems.size();
    Optional<String> study = text(row, columns, "study", reported);
    Optional<String> group = text(row, columns, "group", reported);
    OptionalDouble time = reading.time(reported);
    Optional<Boolean> event = event(row, columns, reported);
    Optional<Result.Warning> lacking = reported.lacking();
    lacking.ifPresent(warnings::add);
    if (lacking.isEmpty() && problems.size() == before) {
      rows.computeIfAbsent(new Key(study, group), key -> new ArrayList<>())
          .add(new PatientTime(time.orElseThrow(), event.orElseThrow()));
    }
  }

  private static Optional<String> text(
      DataTable.Row row, Columns columns, String role, ReportedRow reported) {
    if (!columns.has(role)) {
      return Optional.empty();
    }
    String text = row.text(columns.column(role));
    if (text.isEmpty()) {
      reported.missing(role);
    }
    return Optional.of(text);
  }

  private static Optional<Boolean> event(DataTable.Row row, Columns columns, ReportedRow reported) {
    String text = row.text(columns.column("event")).toLowerCase(Locale.ROOT);
    if (YES.contains(text)) {
      return Optional.of(true);
    }
    if (NO.contains(text)) {
      return Optional.of(false);
    }
    if (text.isEmpty()) {
      reported.missing("event");
    } else {
      reported.wrong(
          "event",
          "not-an-event",
          "found '" + text + "', expected 1 (the event came then) or 0 (last seen without it)");
    }
    return Optional.empty();
  }
}
