package gapwise.cohort;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.vocabulary.Bone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What of a patient's row is the same in every paper that tells of the same patient: age and
 * missing length, and whatever else is printed of sex, bone and measured results. Follow-up is left
 * out, for a later paper follows longer.
 *
 * @param ageMonths age at operation in months
 * @param lengthMillimetres missing length
 * @param sex code, empty where not given
 * @param bone code, empty where not given
 * @param measured measured outcomes by code, in thousandths of their unit with the unit
 */
record PatientPrint(
    long ageMonths,
    long lengthMillimetres,
    String sex,
    Optional<Bone> bone,
    Map<String, String> measured) {

  /** Empty where age or length is not given: without both, chance makes twins. */
  static Optional<PatientPrint> of(PatientRow row) {
    if (row.ageYears().isEmpty() || row.defect().isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> measured = new TreeMap<>();
    row.outcomes()
        .forEach(
            (code, outcome) -> {
              if (outcome instanceof PatientOutcome.Measured number) {
                measured.put(code, Math.round(number.value() * 1000) + " " + number.unit());
              }
            });
    return Optional.of(
        new PatientPrint(
            Math.round(row.ageYears().getAsDouble() * 12),
            Math.round(row.defect().get().centimetres() * 10),
            row.sex().map(Enum::name).orElse(""),
            row.bone(),
            measured));
  }

  static List<PatientPrint> of(List<PatientRow> rows) {
    List<PatientPrint> prints = new ArrayList<>();
    rows.forEach(row -> of(row).ifPresent(prints::add));
    return prints;
  }

  /** What rows of one patient share in any two papers. */
  String key() {
    return ageMonths + "|" + lengthMillimetres;
  }

  /** Age and length are the same and nothing given of both differs. */
  boolean maybe(PatientPrint other) {
    return ageMonths == other.ageMonths
        && lengthMillimetres == other.lengthMillimetres
        && (sex.isEmpty() || other.sex.isEmpty() || sex.equals(other.sex))
        && (bone.isEmpty() || other.bone.isEmpty() || bone.equals(other.bone))
        && differing(other) == 0;
  }

  private long differing(PatientPrint other) {
    return measured.entrySet().stream()
        .filter(one -> other.measured.containsKey(one.getKey()))
        .filter(one -> !one.getValue().equals(other.measured.get(one.getKey())))
        .count();
  }

  /** How many measured results both give, and give alike. */
  long agreeing(PatientPrint other) {
    return measured.entrySet().stream()
        .filter(one -> one.getValue().equals(other.measured.get(one.getKey())))
        .count();
  }
}
