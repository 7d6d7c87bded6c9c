package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.effect.ArmCounts;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.effect.arms.MultiArmEffect;
import gapwise.effect.arms.MultiArmMeasure;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.network.exact.CountedStudy;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Studies of a network from rows of arms.
 *
 * @param <D> what an arm reports
 */
final class ArmStudies<D extends StudyData> {
  private final NetworkPlan plan;
  private final MultiArmMeasure<D> measure;
  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings = new ArrayList<>();
  private final Set<String> named = new TreeSet<>();
  private final List<D> read = new ArrayList<>();
  private final Map<String, List<Arm<D>>> studies = new LinkedHashMap<>();
  private final List<NetworkStudy> entering = new ArrayList<>();
  private final List<CountedStudy> counted = new ArrayList<>();
  private final Map<String, Double> participants = new HashMap<>();
  private final Map<Integer, Result.Study> rows = new HashMap<>();

  private record Arm<D>(DataTable.Row row, String treatment, D data) {}

  private ArmStudies(NetworkPlan plan, MultiArmMeasure<D> measure, DataTable table) {
    this.plan = plan;
    this.measure = measure;
    this.table = table;
  }

  static <D extends StudyData> NetworkData read(
      NetworkPlan plan, MultiArmMeasure<D> measure, DataTable table) {
    return new ArmStudies<>(plan, measure, table).read();
  }

  private NetworkData read() {
    List<String> roles = new ArrayList<>(List.of("study", "year", "treatment"));
    List<String> required = new ArrayList<>(List.of("study", "treatment"));
    for (Measure.Role role : measure.roles()) {
      roles.add(role.name());
      if (role.required()) {
        required.add(role.name());
      }
    }
    Columns columns = Columns.resolve(plan.head().named(), table, roles, required, problems);
    if (columns.has("study") && columns.has("treatment")) {
      table.rows().forEach(row -> readRow(columns, row));
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Map<String, List<Arm<D>>> usable = new LinkedHashMap<>();
    studies.forEach(
        (label, arms) -> {
          if (arms.size() > 1) {
            usable.put(label, arms);
          } else {
            warnings.add(oneArm(label, arms));
          }
        });
    enter(usable);
    return new NetworkData(
        named,
        entering,
        counted,
        entries(columns),
        participants,
        data(columns),
        measure.shown(),
        warnings);
  }

  private void readRow(Columns columns, DataTable.Row row) {
    ReportedRow reported = new ReportedRow(columns, row, problems);
    String study = row.text(columns.column("study"));
    String treatment = row.text(columns.column("treatment"));
    Optional<D> data = measure.read(reported);
    if (study.isEmpty()) {
      reported.missing("study");
    }
    if (treatment.isEmpty()) {
      reported.missing("treatment");
    }
    reported.lacking().ifPresent(warnings::add);
    data.ifPresent(read::add);
    if (!treatment.isEmpty()) {
      named.add(treatment);
    }
    if (data.isEmpty() || study.isEmpty() || treatment.isEmpty()) {
      return;
    }
    List<Arm<D>> arms = studies.computeIfAbsent(study, s -> new ArrayList<>());
    if (arms.stream().anyMatch(arm -> arm.treatment().equals(treatment))) {
      problems.add(
          row.place() + ", column " + columns.column("treatment"),
          "treatment-twice",
          study
              + " has '"
              + treatment
              + "' in more than one row, expected one row for each treatment of a study; put the"
              + " arms together or tell them apart");
      return;
    }
    Optional<Problem> unusable = measure.unusable(data.get());
    if (unusable.isPresent()) {
      warnings.add(
          Result.Warning.of(
              unusable.get().code(),
              say(
                  "analysis.arm-left-out",
                  Map.of("study", study, "treatment", treatment, "why", unusable.get().message())),
              study));
      return;
    }
    arms.add(new Arm<>(row, treatment, data.get()));
  }

  private Result.Warning oneArm(String label, List<Arm<D>> arms) {
    return Result.Warning.of(
        "study-left-out",
        arms.isEmpty()
            ? say("analysis.no-arm-used", Map.of("study", label))
            : say(
                "analysis.one-arm-used",
                Map.of("study", label, "treatment", arms.get(0).treatment())),
        label);
  }

  private void enter(Map<String, List<Arm<D>>> usable) {
    List<MultiArmEffect> effects =
        measure.effects(
            usable.values().stream()
                .map(arms -> arms.stream().map(arm -> arm.data()).toList())
                .toList());
    int at = 0;
    for (Map.Entry<String, List<Arm<D>>> study : usable.entrySet()) {
      MultiArmEffect effect = effects.get(at++);
      boolean counts = plan.exact() && count(study.getKey(), study.getValue());
      if (effect.leftOut().isPresent() && !counts) {
        warnings.add(StudyWarnings.leftOut(effect.leftOut().get(), study.getKey()));
      } else {
        enter(study.getKey(), study.getValue(), effect);
      }
    }
    StudyWarnings.cellsAdded(
            effects.stream().filter(MultiArmEffect::cellsAdded).count(), effects.size())
        .ifPresent(warnings::add);
    if (plan.exact() ? counted.isEmpty() : entering.isEmpty()) {
      warnings.add(
          StudyWarnings.nothingLeft(
              effects.stream().flatMap(effect -> effect.leftOut().stream()).toList()));
    }
  }

  /** Takes a study by its counts; whether it says anything. */
  private boolean count(String label, List<Arm<D>> arms) {
    CountedStudy study =
        new CountedStudy(
            label,
            arms.stream().map(Arm::treatment).toList(),
            arms.stream().map(arm -> (ArmCounts) arm.data()).toList());
    if (study.tells()) {
      counted.add(study);
    }
    return study.tells();
  }

  private void enter(String label, List<Arm<D>> arms, MultiArmEffect effect) {
    boolean known = effect.leftOut().isEmpty();
    if (known) {
      entering.add(
          new NetworkStudy(
              label,
              arms.stream().map(Arm::treatment).toList(),
              effect.effects(),
              effect.covariance()));
    }
    for (int i = 0; i < arms.size(); i++) {
      Arm<D> arm = arms.get(i);
      if (measure.fromMedian(arm.data())) {
        warnings.add(StudyWarnings.fromMedian(label + ", " + arm.treatment()));
      }
      arm.data().participants().ifPresent(n -> participants.merge(arm.treatment(), n, Double::sum));
      if (i > 0 && known) {
        rows.put(
            arm.row().number(),
            NetworkRow.of(
                arm.row(),
                label,
                effect.effects().get(i - 1),
                effect.covariance().get(i - 1).get(i - 1),
                plan.settings().level(),
                measure.shown()));
      }
    }
  }

  private List<Result.Study> entries(Columns columns) {
    return table.rows().stream()
        .map(
            row -> {
              Result.Study entry = rows.get(row.number());
              return entry == null ? NetworkRow.without(row, columns.label(row)) : entry;
            })
        .toList();
  }

  private Result.Data data(Columns columns) {
    return new Result.Data(
        (int) table.rows().stream().map(columns::label).distinct().count(),
        read.size(),
        total(StudyData::participants),
        total(StudyData::allEvents),
        table.sha256(),
        List.of(),
        table.extraction());
  }

  private OptionalDouble total(Function<StudyData, OptionalDouble> part) {
    boolean some = read.stream().anyMatch(arm -> part.apply(arm).isPresent());
    return some
        ? OptionalDouble.of(read.stream().mapToDouble(arm -> part.apply(arm).orElse(0)).sum())
        : OptionalDouble.empty();
  }
}
