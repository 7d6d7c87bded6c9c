package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.effect.BackTransform;
import gapwise.effect.GivenEffect;
import gapwise.effect.Measure;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.network.GivenContrasts;
import gapwise.synthesis.network.GivenContrasts.Contrast;
import gapwise.synthesis.network.NetworkStudy;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** Studies of a network from rows of contrasts, treatment less against. */
final class ContrastStudies {
  private static final List<String> NAMES = List.of("study", "treatment", "against");

  private final NetworkPlan plan;
  private final Measure<GivenEffect> measure;
  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings = new ArrayList<>();
  private final Set<String> named = new TreeSet<>();
  private final Map<String, List<Contrast>> studies = new LinkedHashMap<>();
  private final Map<String, Integer> rowsWithout = new LinkedHashMap<>();
  private final Map<String, Set<String>> arms = new LinkedHashMap<>();
  private final List<Result.Study> rows = new ArrayList<>();

  private ContrastStudies(NetworkPlan plan, Measure<GivenEffect> measure, DataTable table) {
    this.plan = plan;
    this.measure = measure;
    this.table = table;
  }

  static NetworkData read(NetworkPlan plan, Measure<GivenEffect> measure, DataTable table) {
    return new ContrastStudies(plan, measure, table).read();
  }

  private NetworkData read() {
    List<String> roles = new ArrayList<>(NAMES);
    roles.add("year");
    List<String> required = new ArrayList<>(NAMES);
    required.add("effect");
    measure.roles().forEach(role -> roles.add(role.name()));
    Columns columns = Columns.resolve(plan.head().named(), table, roles, required, problems);
    if (NAMES.stream().allMatch(columns::has)) {
      table.rows().forEach(row -> readRow(columns, row));
    }
    List<NetworkStudy> entering = new ArrayList<>();
    if (problems.isEmpty()) {
      studies.forEach((label, contrasts) -> enter(label, contrasts).ifPresent(entering::add));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    if (entering.isEmpty()) {
      warnings.add(StudyWarnings.nothingLeft(List.of()));
    }
    Result.Data data =
        new Result.Data(
            (int) table.rows().stream().map(columns::label).distinct().count(),
            arms.values().stream().mapToInt(Set::size).sum(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            table.sha256());
    return new NetworkData(named, entering, List.of(), rows, Map.of(), data, back(), warnings);
  }

  private BackTransform back() {
    return measure.shown(List.of());
  }

  private void readRow(Columns columns, DataTable.Row row) {
    ReportedRow reported = new ReportedRow(columns, row, problems);
    for (String role : NAMES) {
      if (row.text(columns.column(role)).isEmpty()) {
        reported.missing(role);
      }
    }
    Optional<GivenEffect> given = measure.read(reported);
    if (given.isPresent() && given.get().variance().isEmpty()) {
      reported.missing("standardError");
    }
    reported.lacking().ifPresent(warnings::add);
    String label = columns.label(row);
    String study = row.text(columns.column("study"));
    String first = row.text(columns.column("treatment"));
    String second = row.text(columns.column("against"));
    rows.add(entry(row, label, given));
    given.flatMap(one -> StudyWarnings.fromTest(one.fromTest(), label)).ifPresent(warnings::add);
    if (study.isEmpty() || first.isEmpty() || second.isEmpty()) {
      return;
    }
    named.addAll(List.of(first, second));
    arms.computeIfAbsent(study, s -> new LinkedHashSet<>()).addAll(List.of(first, second));
    if (first.equals(second)) {
      problems.add(
          row.place() + ", column " + columns.column("against"),
          "treatment-twice",
          "found '" + first + "' against itself, expected two treatments; correct one of them");
      return;
    }
    List<Contrast> contrasts = studies.computeIfAbsent(study, s -> new ArrayList<>());
    if (given.isEmpty() || given.get().variance().isEmpty()) {
      rowsWithout.merge(study, 1, Integer::sum);
      return;
    }
    contrasts.add(
        new Contrast(first, second, given.get().estimate(), given.get().variance().getAsDouble()));
  }

  private Result.Study entry(DataTable.Row row, String label, Optional<GivenEffect> given) {
    if (given.isEmpty()) {
      return NetworkRow.without(row, label);
    }
    GivenEffect effect = given.get();
    return effect.variance().isEmpty()
        ? NetworkRow.withoutVariance(row, label, effect.estimate())
        : NetworkRow.of(
            row,
            label,
            effect.estimate(),
            effect.variance().getAsDouble(),
            plan.settings().level(),
            back());
  }

  private Optional<NetworkStudy> enter(String label, List<Contrast> contrasts) {
    if (rowsWithout.containsKey(label)) {
      warnings.add(
          Result.Warning.of(
              "study-left-out",
              say(
                  "analysis.contrasts-left-out",
                  Map.of("study", label, "rows", String.valueOf(rowsWithout.get(label)))),
              label));
      return Optional.empty();
    }
    GivenContrasts.Read read = GivenContrasts.read(label, contrasts);
    if (read instanceof GivenContrasts.Wrong wrong) {
      problems.add("study " + label, wrong.code(), wrong.message());
      return Optional.empty();
    }
    return Optional.of(((GivenContrasts.Study) read).study());
  }
}
