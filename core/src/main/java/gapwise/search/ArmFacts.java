package gapwise.search;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.PatientRow;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/**
 * What filters hold against an arm. A fact that the paper does not give for the arm is taken from
 * its patients described one by one, else from what is reported of all arms together.
 *
 * @param bones bones among the defects
 * @param segments AO/OTA codes of bone segments
 * @param infected infected at the start
 * @param outcomes codes of outcomes reported for the arm in any form, or of any of its patients,
 *     each with its other side
 * @param defect the missing length that speaks for it
 * @param patients patients treated
 * @param followUpMonths months of follow-up by mean or median, else by the shortest
 */
record ArmFacts(
    Set<Bone> bones,
    Set<String> segments,
    Optional<YesOrNo> infected,
    Set<String> outcomes,
    Optional<ArmDefect> defect,
    OptionalInt patients,
    OptionalDouble followUpMonths) {

  ArmFacts {
    bones = Set.copyOf(bones);
    segments = Set.copyOf(segments);
    outcomes = Set.copyOf(outcomes);
  }

  static ArmFacts of(Study study, Arm arm) {
    List<PatientRow> patients = study.patientsOf(arm.id());
    return new ArmFacts(
        bones(study, arm, patients),
        segments(study, arm, patients),
        ArmInfection.of(study, arm).atStart(),
        outcomes(study, arm, patients),
        ArmDefect.of(study, arm),
        patientCount(study, arm, patients),
        ArmFollowUp.of(study, arm).map(ArmFollowUp::leastMonths).orElse(OptionalDouble.empty()));
  }

  private static Set<Bone> bones(Study study, Arm arm, List<PatientRow> patients) {
    EnumSet<Bone> bones = named(arm.baseline());
    patients.forEach(patient -> patient.bone().ifPresent(bones::add));
    return bones.isEmpty() ? named(study.whole()) : bones;
  }

  private static EnumSet<Bone> named(Baseline baseline) {
    EnumSet<Bone> bones = EnumSet.noneOf(Bone.class);
    for (BoneCount bone : baseline.bones()) {
      if (bone.count().isEmpty() || bone.count().getAsInt() > 0) {
        bones.add(bone.bone());
      }
    }
    return bones;
  }

  private static Set<String> segments(Study study, Arm arm, List<PatientRow> patients) {
    Set<String> segments = new TreeSet<>(arm.baseline().segments());
    patients.forEach(patient -> patient.segment().ifPresent(segments::add));
    return segments.isEmpty() ? Set.copyOf(study.whole().segments()) : segments;
  }

  private static Set<String> outcomes(Study study, Arm arm, List<PatientRow> patients) {
    Set<String> outcomes = new TreeSet<>();
    study.outcomes().stream()
        .filter(r -> r.scope().armIds().isEmpty() || r.scope().armIds().contains(arm.id()))
        .forEach(report -> outcomes.add(report.outcome().code()));
    patients.forEach(patient -> outcomes.addAll(patient.outcomes().keySet()));
    study.curves().stream()
        .filter(curve -> curve.arm().equals(arm.id()))
        .forEach(curve -> outcomes.add(curve.outcome().code()));
    // Who counts those not united has counted those united, too.
    List.copyOf(outcomes)
        .forEach(
            code ->
                Outcome.vocabulary()
                    .find(code)
                    .flatMap(Outcome::otherSide)
                    .map(Outcome::code)
                    .ifPresent(outcomes::add));
    return outcomes;
  }

  private static OptionalInt patientCount(Study study, Arm arm, List<PatientRow> patients) {
    if (arm.baseline().patients().isPresent()) {
      return arm.baseline().patients();
    }
    if (!patients.isEmpty()) {
      return OptionalInt.of(patients.size());
    }
    return study.arms().size() == 1 ? study.whole().patients() : OptionalInt.empty();
  }
}
