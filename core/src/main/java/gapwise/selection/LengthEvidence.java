package gapwise.selection;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.unit.LengthRange;
import gapwise.search.SearchRequest.DefectMatch;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Whether the whole of an arm is evidence for the missing length asked for. An arm that gives no
 * length, or one with an end left open, is none: "over 4 cm" says nothing of 30 to 40 cm. Its
 * patients described one by one, or a part reported apart, still may be.
 */
final class LengthEvidence {
  private LengthEvidence() {}

  /** Why a value of the whole arm is no evidence; empty where it is, or no length is asked for. */
  static Optional<Reason> against(Question question, ArmCase arm) {
    Optional<LengthRange> asked = question.among().defect();
    DefectMatch match = question.among().defectMatch();
    if (asked.isEmpty() || match == DefectMatch.NO_CENTRE) {
      return Optional.empty();
    }
    LengthRange range = asked.get();
    Optional<ArmDefect> defect = ArmDefect.of(arm.study(), arm.arm());
    if (defect.isEmpty()) {
      return Optional.of(Reason.Plain.LENGTH_UNKNOWN);
    }
    if (match == DefectMatch.CENTRE) {
      return withoutCentre(defect.get(), range);
    }
    if (match == DefectMatch.OVERLAP && allPatientsLieOutside(defect.get(), arm, range)) {
      return Optional.of(Reason.Plain.NO_PATIENTS_IN_RANGE);
    }
    return defect.get().wholeOverlaps(range) ? Optional.empty() : notSaid(defect.get(), range);
  }

  /** The stretch from shortest to longest may reach over a range in which no patient lies. */
  private static boolean allPatientsLieOutside(ArmDefect defect, ArmCase arm, LengthRange range) {
    List<Double> lengths = defect.patientsCentimetres();
    OptionalInt treated = arm.arm().baseline().patients();
    return treated.isPresent()
        && !lengths.isEmpty()
        && lengths.size() >= treated.getAsInt()
        && lengths.stream().noneMatch(range::contains);
  }

  private static Optional<Reason> withoutCentre(ArmDefect defect, LengthRange range) {
    if (defect.length().centreCentimetres().isPresent()) {
      return Optional.empty();
    }
    return notSaid(defect, range)
        .or(
            () ->
                defect.overlaps(range)
                    ? Optional.of(Reason.Plain.LENGTH_WITHOUT_MIDDLE)
                    : Optional.empty());
  }

  /** Empty for an arm that lies outside the range: the search does not find it. */
  private static Optional<Reason> notSaid(ArmDefect defect, LengthRange range) {
    Optional<LengthRange> oneSided = defect.length().oneSidedRange();
    if (oneSided.isPresent()) {
      return oneSided.filter(range::overlaps).map(says -> Reason.Plain.LENGTH_ONE_SIDED);
    }
    return defect.length().closedRange().isEmpty()
        ? Optional.of(Reason.Plain.LENGTH_UNKNOWN)
        : Optional.empty();
  }
}
