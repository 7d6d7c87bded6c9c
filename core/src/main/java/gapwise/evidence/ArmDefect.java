package gapwise.evidence;

import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The missing length that speaks for an arm, and how it is known.
 *
 * @param length as reported or as summed up
 * @param origin how it is known
 * @param patientsCentimetres the missing length of each patient described one by one, in their
 *     order
 */
public record ArmDefect(DefectLength length, Origin origin, List<Double> patientsCentimetres) {

  /** How a value of an arm is known. */
  public enum Origin {
    REPORTED_FOR_ARM,
    FROM_PATIENTS,
    REPORTED_FOR_ALL_ARMS
  }

  public ArmDefect {
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(origin, "origin");
    patientsCentimetres = List.copyOf(patientsCentimetres);
  }

  /**
   * The defect of an arm: as reported for it; else summed up from its patients; else as reported
   * for all arms together.
   */
  public static Optional<ArmDefect> of(Study study, Arm arm) {
    List<Double> patients =
        study.patientsOf(arm.id()).stream()
            .flatMap(patient -> patient.defect().stream())
            .map(Length::centimetres)
            .toList();
    if (arm.baseline().defect().isPresent()) {
      return Optional.of(
          new ArmDefect(arm.baseline().defect().get(), Origin.REPORTED_FOR_ARM, patients));
    }
    if (!patients.isEmpty()) {
      DefectLength length = DefectLength.of(QuantitySummary.of(Unit.CENTIMETRES, patients));
      return Optional.of(new ArmDefect(length, Origin.FROM_PATIENTS, patients));
    }
    return study
        .whole()
        .defect()
        .map(length -> new ArmDefect(length, Origin.REPORTED_FOR_ALL_ARMS, patients));
  }

  /**
   * Whether some of the arm lies in a range by what is reported: by each patient where nothing with
   * both ends is known but of patients; else by the stretch that has both ends. A stretch with one
   * end alone counts only where the range holds all of it: "over 4 cm" says nothing of 30 to 40 cm.
   */
  public boolean overlaps(LengthRange range) {
    if (origin == Origin.FROM_PATIENTS) {
      return anyPatientIn(range);
    }
    return length.closedRange().filter(range::overlaps).isPresent()
        || oneSidedWithin(range)
        || (length.closedRange().isEmpty() && anyPatientIn(range));
  }

  /**
   * Whether it is not said if any of the arm lies in a range: no number tells, or only one that
   * leaves an end open and reaches into the range. Never where {@link #overlaps} holds.
   */
  public boolean leavesOpen(LengthRange range) {
    if (origin == Origin.FROM_PATIENTS || overlaps(range)) {
      return false;
    }
    Optional<LengthRange> oneSided = length.oneSidedRange();
    return oneSided.isPresent() ? range.overlaps(oneSided.get()) : length.closedRange().isEmpty();
  }

  /** Whether what is reported of the whole arm, apart from single patients, lies in a range. */
  public boolean wholeOverlaps(LengthRange range) {
    return origin == Origin.FROM_PATIENTS
        || length.closedRange().filter(range::overlaps).isPresent()
        || oneSidedWithin(range);
  }

  /**
   * The missing length of each patient, where the arm is counted by them when lengths are asked
   * for: nothing else with both ends is known of it, or each of its patients is described with a
   * length. None where the arm counts as a whole.
   *
   * @param treated patients of the arm as printed
   */
  public List<Double> countedByPatients(OptionalInt treated) {
    boolean each = treated.isPresent() && patientsCentimetres.size() >= treated.getAsInt();
    return origin == Origin.FROM_PATIENTS || length.closedRange().isEmpty() || each
        ? patientsCentimetres
        : List.of();
  }

  private boolean oneSidedWithin(LengthRange range) {
    return length.oneSidedRange().filter(range::holds).isPresent();
  }

  private boolean anyPatientIn(LengthRange range) {
    return patientsCentimetres.stream().anyMatch(range::contains);
  }

  /** Whether the mean or median lies in a range. */
  public boolean centreLiesIn(LengthRange range) {
    return length.centreCentimetres().isPresent()
        && range.contains(length.centreCentimetres().getAsDouble());
  }
}
