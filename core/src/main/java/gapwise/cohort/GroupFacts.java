package gapwise.cohort;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is compared of one group of patients.
 *
 * @param arm id of the group
 * @param label what the paper calls it
 * @param method code of the principal method
 * @param parts codes of what goes with it
 * @param patients how many, empty where not given
 * @param bones bones that occur; empty where the paper does not say
 * @param infected share infected at the start, 0 to 1
 * @param lengths missing length in centimetres
 * @param ages age in years
 * @param numbers the numbers printed, by name
 * @param prints patients described one by one
 * @param keptApart whether it is never pooled
 */
record GroupFacts(
    String arm,
    String label,
    String method,
    Set<String> parts,
    OptionalInt patients,
    Set<Bone> bones,
    Optional<Double> infected,
    Span lengths,
    Span ages,
    PrintedNumbers numbers,
    List<PatientPrint> prints,
    boolean keptApart) {

  GroupFacts {
    parts = Set.copyOf(parts);
    bones = Set.copyOf(bones);
    prints = List.copyOf(prints);
  }

  static GroupFacts of(Study study, Arm arm) {
    Baseline own = arm.baseline();
    Optional<QuantitySummary> lengths =
        own.defect().flatMap(defect -> defect.summary()).map(s -> s.in(Unit.CENTIMETRES));
    return new GroupFacts(
        arm.id(),
        arm.label().or(() -> arm.method().words()).orElse(""),
        arm.method().principal().code(),
        arm.method().parts().stream().map(part -> part.code()).collect(Collectors.toSet()),
        own.patients(),
        bones(own.bones()),
        own.infected().flatMap(EventCount::share).or(own::infectedShare),
        lengths.map(Span::of).orElse(Span.UNKNOWN),
        own.age().map(Span::of).orElse(Span.UNKNOWN),
        PrintedNumbers.of(study, arm),
        PatientPrint.of(study.patientsOf(arm.id())),
        arm.keptApart().isPresent());
  }

  private static Set<Bone> bones(List<BoneCount> counts) {
    Set<Bone> bones = EnumSet.noneOf(Bone.class);
    for (BoneCount count : counts) {
      if (count.bone() == Bone.LOWER_LIMB) {
        return Set.of();
      }
      if (count.count().orElse(1) > 0) {
        bones.add(count.bone());
      }
    }
    return bones;
  }
}
