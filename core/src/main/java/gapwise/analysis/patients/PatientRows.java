package gapwise.analysis.patients;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.analysis.rows.RowValue;
import gapwise.effect.ArmCounts;
import gapwise.problem.Problems;
import gapwise.synthesis.patients.CountArm;
import gapwise.synthesis.patients.MeanArm;
import gapwise.synthesis.patients.Patient;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;

/** Reads the two tables of a {@link PatientsPlan}, study by study. */
final class PatientRows {
  private static final Set<String> YES = Set.of("true", "yes");
  private static final Set<String> NO = Set.of("false", "no");

  /** Beyond this no unit is meant, and powers of values stay far within a double. */
  private static final double LARGEST = 1e12;

  private static final String SUMMARIES = "summaries, ";

  private final PatientsPlan plan;
  private final Problems problems;
  private final List<Result.Warning> warnings;

  PatientRows(PatientsPlan plan, Problems problems, List<Result.Warning> warnings) {
    this.plan = plan;
    this.problems = problems;
    this.warnings = warnings;
  }

  /** The patients of each study. */
  Map<String, List<Patient>> patients(DataTable table) {
    List<String> roles = List.of("study", plan.events() ? "event" : "value", "moderator");
    return read(
        table,
        new Columns.Named("columns", plan.head().columns(), "patients-with-summaries"),
        roles,
        roles,
        "",
        this::patient);
  }

  /** The arms of each study, known by counts. */
  Map<String, List<CountArm>> counts(DataTable table) {
    return summaries(table, List.of("study", "events", "total", "moderator"), this::count);
  }

  /** The arms of each study, known by means. */
  Map<String, List<MeanArm>> means(DataTable table) {
    return summaries(table, List.of("study", "mean", "sd", "n", "moderator"), this::mean);
  }

  private <A> Map<String, List<A>> summaries(
      DataTable table,
      List<String> required,
      BiFunction<ReportedRow, RowValue, Optional<A>> reading) {
    List<String> roles = new ArrayList<>(required);
    if (plan.events()) {
      roles.add("moderatorSd");
    }
    return read(
        table,
        new Columns.Named("summaries.columns", plan.summaryColumns(), "summaries"),
        roles,
        required,
        SUMMARIES,
        reading);
  }

  private <A> Map<String, List<A>> read(
      DataTable table,
      Columns.Named named,
      List<String> roles,
      List<String> required,
      String prefix,
      BiFunction<ReportedRow, RowValue, Optional<A>> reading) {
    Map<String, List<A>> byStudy = new LinkedHashMap<>();
    int before = problems.size();
    Columns columns = Columns.resolve(named, table, roles, required, problems);
    if (problems.size() > before) {
      return byStudy;
    }
    for (DataTable.Row row : table.rows()) {
      Problems own = new Problems();
      ReportedRow reported = new ReportedRow(columns, row, own);
      String study = row.text(columns.column("study"));
      if (study.isEmpty()) {
        reported.missing("study");
      }
      Optional<A> one = reading.apply(reported, row.value(columns.column(roles.get(1))));
      Optional<Result.Warning> lacking = reported.lacking();
      lacking.ifPresent(
          warning ->
              warnings.add(
                  new Result.Warning(
                      warning.code(),
                      prefix + warning.message(),
                      warning.study(),
                      warning.studyId(),
                      warning.armId())));
      own.list().forEach(p -> problems.add(prefix + p.where(), p.code(), p.message()));
      if (own.isEmpty() && lacking.isEmpty() && one.isPresent()) {
        byStudy.computeIfAbsent(study, key -> new ArrayList<>()).add(one.get());
      }
    }
    return byStudy;
  }

  private Optional<Patient> patient(ReportedRow row, RowValue event) {
    OptionalDouble moderator = required(row, "moderator");
    OptionalDouble outcome = plan.events() ? event(row, event) : value(row);
    return moderator.isEmpty() || outcome.isEmpty()
        ? Optional.empty()
        : Optional.of(new Patient(outcome.getAsDouble(), moderator.getAsDouble()));
  }

  private static OptionalDouble event(ReportedRow row, RowValue value) {
    OptionalDouble number = value.number();
    if (number.isPresent() && (number.getAsDouble() == 0 || number.getAsDouble() == 1)) {
      return number;
    }
    String word = value.text().toLowerCase(Locale.ROOT);
    if (YES.contains(word) || NO.contains(word)) {
      return OptionalDouble.of(YES.contains(word) ? 1 : 0);
    }
    if (word.isEmpty()) {
      row.missing("event");
    } else {
      row.wrong(
          "event",
          "not-an-event",
          "found '" + value.text() + "', expected 1 (the event came) or 0 (not)");
    }
    return OptionalDouble.empty();
  }

  private OptionalDouble value(ReportedRow row) {
    OptionalDouble value = required(row, "value");
    if (plan.logs() && value.isPresent()) {
      if (!(value.getAsDouble() > 0)) {
        row.wrong(
            "value",
            "value-too-small",
            "found " + value.getAsDouble() + ", but only values above 0 have a log");
        return OptionalDouble.empty();
      }
      return OptionalDouble.of(Math.log(value.getAsDouble()));
    }
    return value;
  }

  private Optional<CountArm> count(ReportedRow row, RowValue events) {
    OptionalDouble moderator = required(row, "moderator");
    OptionalDouble spread = row.optional("moderatorSd", 0);
    return ArmCounts.of(row)
        .filter(counts -> moderator.isPresent())
        .map(
            counts ->
                new CountArm(counts.events(), counts.total(), moderator.getAsDouble(), spread));
  }

  private Optional<MeanArm> mean(ReportedRow row, RowValue reported) {
    OptionalDouble moderator = required(row, "moderator");
    OptionalDouble n = row.requiredCount("n", 1);
    OptionalDouble mean = required(row, "mean");
    OptionalDouble sd = row.optional("sd", 0);
    if (sd.isEmpty()) {
      row.missing("sd");
    }
    if (moderator.isEmpty() || n.isEmpty() || mean.isEmpty() || sd.isEmpty()) {
      return Optional.empty();
    }
    double m = mean.getAsDouble();
    double squared = sd.getAsDouble() * sd.getAsDouble();
    if (plan.logs()) {
      if (!(m > 0)) {
        row.wrong("mean", "value-too-small", "found " + m + ", but only means above 0 have a log");
        return Optional.empty();
      }
      // If values are log-normal: Higgins, White and Anzures-Cabrera, Stat Med 2008;27:6072.
      squared = Math.log1p(sd.getAsDouble() / m * (sd.getAsDouble() / m));
      m = Math.log(m) - squared / 2;
    }
    double variance = squared / n.getAsDouble();
    if (!(variance >= 1e-60 && variance <= 1e30)) {
      row.wrong(
          "sd",
          "out-of-range",
          "found "
              + sd.getAsDouble()
              + ", expected a standard deviation above 0 within arithmetic");
      return Optional.empty();
    }
    return Optional.of(new MeanArm(m, variance, moderator.getAsDouble()));
  }

  private static OptionalDouble required(ReportedRow row, String role) {
    OptionalDouble number = row.number(role);
    if (number.isEmpty()) {
      row.missing(role);
    } else if (Math.abs(number.getAsDouble()) > LARGEST) {
      row.wrong(
          role,
          "value-too-large",
          "found " + number.getAsDouble() + ", more than any unit needs; take a larger unit");
      return OptionalDouble.empty();
    }
    return number;
  }
}
