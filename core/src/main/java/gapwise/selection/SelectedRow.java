package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmName;
import gapwise.evidence.Definition;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One row that answers a question: the value of one arm.
 *
 * @param study the study
 * @param arm its arm, or all its arms as one ({@link gapwise.evidence.AllGroups})
 * @param studyName first author and year; with the id where another study of the selection has the
 *     same, so that it is unique among studies
 * @param value the numbers, as reported or summed up
 * @param basis how the numbers were come by
 * @param otherSide the outcome that the paper counts, where the value was had from those who did
 *     not have it; empty for most
 * @param report the report that was taken; empty when patients were summed up
 * @param definition how the outcome is defined: by the report itself, else by its study
 * @param clock where its times start, as far as the paper says
 * @param defect the missing length that speaks for those whom the row is about
 * @param studyVersion version of the study's record that was read
 */
public record SelectedRow(
    Study study,
    Arm arm,
    String studyName,
    ReportedValue value,
    Basis basis,
    Optional<Outcome> otherSide,
    Optional<OutcomeReport> report,
    Definition definition,
    Optional<Clock> clock,
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
    Objects.requireNonNull(otherSide, "otherSide");
    Objects.requireNonNull(report, "report");
    Objects.requireNonNull(definition, "definition");
    Objects.requireNonNull(clock, "clock");
    Objects.requireNonNull(defect, "defect");
  }

  /** Unique among rows: the study, and its arm where it has several. */
  public String label() {
    return ArmName.of(studyName, study, arm);
  }

  /** The same row under another name of its study. */
  SelectedRow named(String name) {
    return new SelectedRow(
        study, arm, name, value, basis, otherSide, report, definition, clock, defect, studyVersion);
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

  /** Whether it is one value for groups of several methods together. */
  public boolean isOfSeveralMethods() {
    return arm.method().principal().equals(Method.SEVERAL);
  }

  /**
   * What the paper counted, where that is the other side: "from its other side: 3 of 20 not
   * united"; empty for most.
   */
  public Optional<String> otherSideWords() {
    if (otherSide.isEmpty() || !(value instanceof ReportedValue.Events events)) {
      return Optional.empty();
    }
    int total = events.count().total().orElseThrow();
    return Optional.of(
        say(
            "selection.from-other-side",
            Map.of(
                "events",
                total - events.count().events().orElseThrow(),
                "total",
                total,
                "such",
                otherSide.get().event().orElseThrow().such())));
  }
}
