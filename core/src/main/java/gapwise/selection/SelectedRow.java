package gapwise.selection;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmName;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One row that answers a question: the value of one arm.
 *
 * @param study the study
 * @param arm its arm
 * @param studyName first author and year; with the id where another study of the selection has the
 *     same, so that it is unique among studies
 * @param value the numbers, as reported or summed up
 * @param basis how the numbers were come by
 * @param report the report that was taken; empty when patients were summed up
 * @param defect the missing length that speaks for those whom the row is about
 * @param studyVersion version of the study's record that was read
 */
public record SelectedRow(
    Study study,
    Arm arm,
    String studyName,
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
    Objects.requireNonNull(studyName, "studyName");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(basis, "basis");
    Objects.requireNonNull(report, "report");
    Objects.requireNonNull(defect, "defect");
  }

  /** Unique among rows: the study, and its arm where it has several. */
  public String label() {
    return ArmName.of(studyName, study, arm);
  }

  /** The same row under another name of its study. */
  SelectedRow named(String name) {
    return new SelectedRow(study, arm, name, value, basis, report, defect, studyVersion);
  }

  /**
   * How many patients or limbs the numbers speak of: their own total; else those followed; else,
   * for a value of the whole arm, the patients of the arm.
   */
  public OptionalInt speaksOf() {
    OptionalInt own = ownTotal();
    if (own.isPresent() || isOfPart()) {
      return own;
    }
    return arm.baseline().patients().isEmpty() && study.arms().size() == 1
        ? study.whole().patients()
        : arm.baseline().patients();
  }

  /** Whether only some patients of the arm are meant: those with the missing length asked for. */
  public boolean isOfPart() {
    return basis == Basis.SUBGROUP || basis == Basis.FROM_PATIENTS_IN_RANGE;
  }

  private OptionalInt ownTotal() {
    OptionalInt printed = OptionalInt.empty();
    if (value instanceof ReportedValue.Events events) {
      printed = events.count().total();
    } else if (value instanceof ReportedValue.Quantity quantity) {
      printed = quantity.summary().n();
    } else if (value instanceof ReportedValue.Categories categories) {
      printed = OptionalInt.of(categories.sum());
    } else if (value instanceof ReportedValue.Tally tally) {
      printed = tally.among();
    }
    if (printed.isPresent() || report.isEmpty()) {
      return printed;
    }
    return report.get().followed();
  }

  /**
   * The definition of an outcome in the words of the paper: the report's own, else that of the
   * study for outcomes of union and of infection.
   */
  public Optional<String> definition(Outcome outcome) {
    Optional<String> own = report.flatMap(OutcomeReport::definition);
    return switch (outcome.family()) {
      case "Union" -> own.or(study::unionDefinition);
      case "Infection" -> own.or(study::infectionDefinition);
      default -> own;
    };
  }
}
