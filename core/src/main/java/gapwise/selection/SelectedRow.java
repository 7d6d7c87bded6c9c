package gapwise.selection;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import java.util.Objects;
import java.util.Optional;

/**
 * One row that answers a question: the value of one arm.
 *
 * @param study the study
 * @param arm its arm
 * @param value the numbers, as reported or summed up
 * @param basis how the numbers were come by
 * @param report the report that was taken; empty when patients were summed up
 * @param defect the missing length that speaks for the arm
 * @param studyVersion version of the study's record that was read
 */
public record SelectedRow(
    Study study,
    Arm arm,
    ReportedValue value,
    Basis basis,
    Optional<OutcomeReport> report,
    Optional<ArmDefect> defect,
    int studyVersion) {

  /** How the numbers of a row were come by. */
  public enum Basis {
    /** As the paper prints them. */
    REPORTED,
    /** Counted back from a printed percentage. */
    COUNTED_BACK,
    /** Summed up from all patients described one by one. */
    FROM_PATIENTS,
    /** Summed up from those patients whose missing length lies in the range asked for. */
    FROM_PATIENTS_IN_RANGE,
    /** Taken from a part of the arm that the paper reports apart and that fits the question. */
    SUBGROUP
  }

  public SelectedRow {
    Objects.requireNonNull(study, "study");
    Objects.requireNonNull(arm, "arm");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(basis, "basis");
    Objects.requireNonNull(report, "report");
    Objects.requireNonNull(defect, "defect");
  }

  /** Unique among rows: the study, and its arm where it has several. */
  public String label() {
    String name = study.citation().label();
    return study.arms().size() == 1 ? name : name + ", " + arm.label().orElse(arm.id());
  }
}
