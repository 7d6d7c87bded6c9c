package gapwise.evidence;

import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

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
   * Whether some of the arm may lie in a range: by each patient where all that is known is about
   * patients, else by the range that the report speaks of.
   */
  public boolean overlaps(LengthRange range) {
    if (origin == Origin.FROM_PATIENTS) {
      return patientsCentimetres.stream().anyMatch(range::contains);
    }
    return length.reportedRange().filter(range::overlaps).isPresent();
  }

  /** Whether the mean or median lies in a range. */
  public boolean centreLiesIn(LengthRange range) {
    return length.centreCentimetres().isPresent()
        && range.contains(length.centreCentimetres().getAsDouble());
  }
}
