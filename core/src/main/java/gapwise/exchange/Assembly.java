package gapwise.exchange;

import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problems;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Makes studies out of what was read from the sheets; rows that belong nowhere become problems. */
final class Assembly {
  private final TemplateReading reading;
  private final Problems problems;

  Assembly(TemplateReading reading, Problems problems) {
    this.reading = reading;
    this.problems = problems;
  }

  /** The studies whose rows are all sound, in the order of their sheet. */
  List<Study> studies() {
    requireSheet(StudySheet.SHEET);
    requireSheet(ArmSheet.SHEET);
    List<StudyDraft> drafts = new ArrayList<>(reading.drafts());
    drafts.sort(
        Comparator.comparingInt(
            draft -> draft.study().map(StudyDraft.Placed::row).orElse(Integer.MAX_VALUE)));
    List<String> known =
        drafts.stream().filter(d -> d.study().isPresent()).map(StudyDraft::id).toList();
    List<Study> studies = new ArrayList<>();
    for (StudyDraft draft : drafts) {
      if (draft.study().isEmpty()) {
        unknownStudy(draft, known);
      } else {
        study(draft).ifPresent(studies::add);
      }
    }
    return studies;
  }

  private void requireSheet(Sheet sheet) {
    if (!reading.hasSheet(sheet)) {
      problems.add(
          "",
          "missing-sheet",
          "There is no sheet "
              + sheet.name()
              + " (as CSV: a file "
              + sheet.name()
              + ".csv). Every study needs its row on the sheets studies and arms.");
    }
  }

  private void unknownStudy(StudyDraft draft, List<String> known) {
    String advice =
        Nearest.to(draft.id(), known).map(near -> "Did you mean " + near + "? ").orElse("")
            + "Add the study there, or correct the id here.";
    draft.whole().ifPresent(row -> unknownStudy(draft.id(), ArmSheet.SHEET, row.row(), advice));
    draft
        .arms()
        .values()
        .forEach(row -> unknownStudy(draft.id(), ArmSheet.SHEET, row.row(), advice));
    draft
        .outcomes()
        .forEach(row -> unknownStudy(draft.id(), OutcomeSheet.SHEET, row.row(), advice));
    draft
        .patients()
        .values()
        .forEach(row -> unknownStudy(draft.id(), PatientSheet.FULL, row.row(), advice));
    draft
        .rowsOfAppraisals()
        .forEach(row -> unknownStudy(draft.id(), AppraisalSheet.SHEET, row, advice));
    draft.curves().rows().forEach(row -> unknownStudy(draft.id(), CurveSheet.SHEET, row, advice));
  }

  private void unknownStudy(String id, Sheet sheet, int row, String advice) {
    if (reading.hasSheet(StudySheet.SHEET)) {
      add(
          sheet,
          row,
          Keys.STUDY,
          "unknown-study",
          "The sheet studies has no study '" + id + "'. " + advice);
    }
  }

  private Optional<Study> study(StudyDraft draft) {
    int before = problems.size();
    int row = draft.study().orElseThrow().row();
    if (draft.arms().isEmpty() && reading.hasSheet(ArmSheet.SHEET)) {
      add(
          StudySheet.SHEET,
          row,
          Keys.STUDY,
          "study-without-arms",
          "The sheet arms has no row of this study. Add one for each group of patients; a case"
              + " report has one arm with one patient.");
    }
    for (StudyDraft.Placed<?> placed : draft.outcomes()) {
      requireArms(draft, OutcomeSheet.SHEET, placed);
    }
    for (StudyDraft.Placed<?> placed : draft.patients().values()) {
      requireArms(draft, PatientSheet.FULL, placed);
    }
    for (StudyDraft.Placed<?> placed : draft.curves().placed()) {
      requireArms(draft, CurveSheet.SHEET, placed);
    }
    for (int curve : draft.curves().withoutPoints()) {
      add(
          CurveSheet.SHEET,
          curve,
          CurveSheet.SHARE,
          "curve-without-points",
          "No row of this curve has a share. Read its points off the figure, or delete its rows.");
    }
    boolean whole = problems.size() == before && draft.isSound() && !draft.arms().isEmpty();
    return whole ? Optional.of(draft.build()) : Optional.empty();
  }

  private void requireArms(StudyDraft draft, Sheet sheet, StudyDraft.Placed<?> placed) {
    for (int index = 0; index < placed.arms().size(); index++) {
      String arm = placed.arms().get(index);
      if (!draft.arms().containsKey(arm)) {
        add(
            sheet,
            placed.row(),
            index == 0 ? Keys.ARM : OutcomeSheet.naming(placed.value(), index),
            "unknown-arm",
            "Study '"
                + draft.id()
                + "' has no arm '"
                + arm
                + "'. Its arms are "
                + String.join(", ", draft.arms().keySet())
                + ". Add the arm on the sheet arms, or correct it here.");
      }
    }
  }

  private void add(Sheet sheet, int row, Field<?> field, String code, String message) {
    problems.add(reading.at(sheet, row, field.name()), code, message);
  }
}
