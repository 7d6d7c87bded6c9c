package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.bubble.BubblePatient;
import gapwise.figure.drawing.MethodMark;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Patients described one by one with a length and a known outcome, for what is told over the
 * length. Their times state no clock, so that where the series stand on one, patients do not stand
 * beside them.
 */
public final class LengthPatients {
  /** What must stand beside marks of patients. */
  static final String CAUTION = say("answer.single-patients");

  private final Selection selection;
  private final Outcome outcome;

  private LengthPatients(Selection selection) {
    this.selection = selection;
    this.outcome = selection.question().outcome();
  }

  /**
   * A patient.
   *
   * @param centimetres of missing bone, within what is asked
   * @param value 1 or 0 for an event that came or did not, else the amount in the outcome's unit
   */
  public record Known(double centimetres, double value) {}

  /** The patients of a row that may stand in the figure. */
  static List<BubblePatient> of(Selection selection, SelectedRow row, MethodMark kind) {
    return known(selection, row).stream()
        .map(one -> new BubblePatient(row.label(), kind, one.centimetres(), one.value()))
        .toList();
  }

  /** The patients of a row of whom both the length and the outcome are known. */
  public static List<Known> known(Selection selection, SelectedRow row) {
    return new LengthPatients(selection).points(row);
  }

  private List<Known> points(SelectedRow row) {
    List<Known> points = new ArrayList<>();
    // A list has no clock of its own; where the row is the list, it was held to the clock already.
    if (outcome.needsClock() && selection.clock().isPresent() && row.report().isPresent()) {
      return points;
    }
    for (PatientRow patient : row.study().patientsOf(row.arm().id())) {
      OptionalDouble value = value(patient);
      if (value.isPresent() && patient.defect().filter(this::asked).isPresent()) {
        points.add(new Known(patient.defect().get().centimetres(), value.getAsDouble()));
      }
    }
    return points;
  }

  private boolean asked(Length length) {
    return selection
        .question()
        .among()
        .defect()
        .map(range -> range.contains(length.centimetres()))
        .orElse(true);
  }

  /** As {@link gapwise.evidence.PatientAggregation} counts and measures; unclear is not known. */
  private OptionalDouble value(PatientRow patient) {
    PatientOutcome known = patient.outcomes().get(outcome.code());
    if (known instanceof PatientOutcome.Happened happened && outcome.isEvent()) {
      return happened.answer() == YesOrNo.YES
          ? OptionalDouble.of(1)
          : happened.answer() == YesOrNo.NO ? OptionalDouble.of(0) : OptionalDouble.empty();
    }
    if (known instanceof PatientOutcome.Measured measured
        && !outcome.isEvent()
        && outcome.unit().isPresent()) {
      Unit unit = outcome.unit().get();
      return measured.unit().dimension() == unit.dimension()
          ? OptionalDouble.of(measured.unit().to(unit, measured.value()))
          : OptionalDouble.empty();
    }
    return OptionalDouble.empty();
  }
}
