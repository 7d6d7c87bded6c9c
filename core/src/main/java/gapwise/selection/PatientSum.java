package gapwise.selection;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.DefectLength;
import gapwise.evidence.PatientAggregation;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.SelectedRow.Basis;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The outcome summed up from patients of an arm who are described one by one: from those whose
 * missing length lies in the range asked for, where there is a range and lengths are known, else
 * from all.
 *
 * @param value the sum
 * @param basis which patients
 * @param defect the missing length of those patients
 * @param better whether it answers a question about a range better than a value of the whole arm:
 *     every patient of the arm is described with a length, some lie outside the range, and the
 *     outcome of all inside is known
 */
record PatientSum(ReportedValue value, Basis basis, Optional<ArmDefect> defect, boolean better) {

  /** A mean of whole numbers times their number misses a whole number by rounding alone. */
  private static final double WHOLE_WITHIN = 1e-6;

  /**
   * @param outcome the outcome asked for, or its other side, which is turned round
   */
  static Optional<PatientSum> of(Question question, Outcome outcome, ArmCase arm) {
    if (outcome.equals(question.outcome())) {
      return of(question, arm);
    }
    return of(question.withOutcome(outcome), arm)
        .flatMap(
            sum ->
                OtherSide.of(sum.value())
                    .map(value -> new PatientSum(value, sum.basis(), sum.defect(), sum.better())));
  }

  private static Optional<PatientSum> of(Question question, ArmCase arm) {
    List<PatientRow> patients = arm.patients();
    Optional<LengthRange> range = question.among().defect();
    boolean lengthsKnown = patients.stream().anyMatch(patient -> patient.defect().isPresent());
    if (range.isPresent() && lengthsKnown) {
      return inRange(question, arm, patients, range.get());
    }
    if (LengthEvidence.against(question, arm).isPresent()) {
      return Optional.empty();
    }
    return PatientAggregation.of(question.outcome(), patients)
        .map(
            value ->
                new PatientSum(
                    value, Basis.FROM_PATIENTS, ArmDefect.of(arm.study(), arm.arm()), false));
  }

  private static Optional<PatientSum> inRange(
      Question question, ArmCase arm, List<PatientRow> patients, LengthRange range) {
    List<PatientRow> inside =
        patients.stream()
            .filter(p -> p.defect().filter(d -> range.contains(d.centimetres())).isPresent())
            .toList();
    Optional<ReportedValue> value = PatientAggregation.of(question.outcome(), inside);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    boolean better =
        isWholeArm(arm, patients)
            && patients.stream().allMatch(patient -> patient.defect().isPresent())
            && inside.size() < patients.size()
            && sizeOf(value.get()).equals(OptionalInt.of(inside.size()));
    return Optional.of(
        new PatientSum(
            value.get(), Basis.FROM_PATIENTS_IN_RANGE, Optional.of(defectOf(inside)), better));
  }

  /** The same as a sum of events among its patients, where it is a mean of whole numbers. */
  PatientSum asEvents() {
    if (value instanceof ReportedValue.Quantity quantity
        && quantity.summary().mean().isPresent()
        && quantity.summary().n().isPresent()) {
      int patients = quantity.summary().n().getAsInt();
      double sum = quantity.summary().mean().getAsDouble() * patients;
      if (sum >= 0 && Math.abs(sum - Math.rint(sum)) < WHOLE_WITHIN) {
        return new PatientSum(
            new ReportedValue.Tally((int) Math.rint(sum), OptionalInt.of(patients)),
            basis,
            defect,
            better);
      }
    }
    return this;
  }

  /** Some papers describe only the cases that they find worth describing. */
  private static boolean isWholeArm(ArmCase arm, List<PatientRow> patients) {
    OptionalInt treated = arm.arm().baseline().patients();
    return treated.isPresent() && patients.size() >= treated.getAsInt();
  }

  private static OptionalInt sizeOf(ReportedValue value) {
    if (value instanceof ReportedValue.Events events) {
      return events.count().total();
    }
    return value instanceof ReportedValue.Quantity quantity
        ? quantity.summary().n()
        : OptionalInt.empty();
  }

  private static ArmDefect defectOf(List<PatientRow> patients) {
    List<Double> lengths =
        patients.stream().flatMap(p -> p.defect().stream()).map(Length::centimetres).toList();
    return new ArmDefect(
        DefectLength.of(QuantitySummary.of(Unit.CENTIMETRES, lengths)),
        ArmDefect.Origin.FROM_PATIENTS,
        lengths);
  }
}
