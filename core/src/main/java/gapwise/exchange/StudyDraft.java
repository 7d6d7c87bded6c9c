package gapwise.exchange;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What has been read of one study, its rows found on any sheet in any order. */
final class StudyDraft {
  /**
   * Something read from a row.
   *
   * @param row its number
   * @param arms the arms that it names
   * @param value empty when something in the row is wrong
   */
  record Placed<T>(int row, List<String> arms, Optional<T> value) {}

  private final String id;
  private Optional<Placed<StudyBuilder>> study = Optional.empty();
  private Optional<Placed<ArmSheet.ArmRow.All>> whole = Optional.empty();
  private final Map<String, Placed<Arm>> arms = new LinkedHashMap<>();
  private final List<Placed<OutcomeReport>> outcomes = new ArrayList<>();
  private final Map<String, Placed<PatientRow>> patients = new LinkedHashMap<>();
  private final List<Placed<PatientRow>> patientsWithoutId = new ArrayList<>();
  private final Map<Appraisal.Matter, AppraisalDraft> appraisals = new LinkedHashMap<>();
  private final List<Placed<Appraisal>> unreadJudgements = new ArrayList<>();
  private final CurveDrafts curves = new CurveDrafts();

  StudyDraft(String id) {
    this.id = id;
  }

  String id() {
    return id;
  }

  Optional<Placed<StudyBuilder>> study() {
    return study;
  }

  Optional<Placed<ArmSheet.ArmRow.All>> whole() {
    return whole;
  }

  Map<String, Placed<Arm>> arms() {
    return arms;
  }

  List<Placed<OutcomeReport>> outcomes() {
    return outcomes;
  }

  Map<String, Placed<PatientRow>> patients() {
    return patients;
  }

  List<Placed<PatientRow>> patientsWithoutId() {
    return patientsWithoutId;
  }

  /** The appraisals of which at least one row could be read, in the order of their rows. */
  List<AppraisalDraft> appraisals() {
    return List.copyOf(appraisals.values());
  }

  /** Keeps a row of the sheet appraisal; the row that judged the same item before, if one did. */
  Optional<Placed<Appraisal>> judged(String item, Placed<Appraisal> row) {
    if (row.value().isEmpty()) {
      unreadJudgements.add(row);
      return Optional.empty();
    }
    return appraisals
        .computeIfAbsent(row.value().get().matter(), matter -> new AppraisalDraft())
        .put(item, row);
  }

  /** Where the sheet appraisal speaks of the study, by one row for each matter. */
  List<Integer> rowsOfAppraisals() {
    List<Integer> rows = new ArrayList<>(unreadJudgements.stream().map(Placed::row).toList());
    appraisals.values().forEach(one -> rows.add(one.row()));
    return rows;
  }

  /** The curves as far as their rows could be read. */
  CurveDrafts curves() {
    return curves;
  }

  void study(Placed<StudyBuilder> row) {
    study = Optional.of(row);
  }

  void whole(Placed<ArmSheet.ArmRow.All> row) {
    whole = Optional.of(row);
  }

  /** Whether every row of the study could be read. */
  boolean isSound() {
    return study.filter(row -> row.value().isPresent()).isPresent()
        && arms.values().stream().allMatch(row -> row.value().isPresent())
        && outcomes.stream().allMatch(row -> row.value().isPresent())
        && patients.values().stream().allMatch(row -> row.value().isPresent())
        && patientsWithoutId.isEmpty()
        && unreadJudgements.isEmpty()
        && curves.isSound();
  }

  /** The study out of its rows, which are sound. */
  Study build() {
    StudyBuilder built = study.flatMap(Placed::value).orElseThrow();
    whole
        .flatMap(Placed::value)
        .ifPresent(
            all ->
                built.whole(all.baseline()).wholeAt(all.provenance(), all.missing(), all.note()));
    return built
        .arms(arms.values().stream().flatMap(row -> row.value().stream()).toList())
        .outcomes(outcomes.stream().flatMap(row -> row.value().stream()).toList())
        .patients(patients.values().stream().flatMap(row -> row.value().stream()).toList())
        .appraisals(appraisals.values().stream().map(AppraisalDraft::build).toList())
        .curves(curves.build())
        .build();
  }
}
