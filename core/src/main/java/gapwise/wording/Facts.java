package gapwise.wording;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Detail;
import gapwise.evidence.Provenance;
import gapwise.evidence.Study;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.MethodPart;
import gapwise.evidence.vocabulary.Vocabulary;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** All that is recorded of a study or an arm, in words, nothing left out. */
public final class Facts {
  private Facts() {}

  /** What is recorded of a study as a whole. */
  public static List<Fact> of(Study study) {
    Fact.Collector facts =
        new Fact.Collector()
            .word("Kind of report", Optional.of(study.reportKind()))
            .word("Design", study.design())
            .text("Design in the paper's words", study.designWords())
            .text("Centres", joined(study.centres()))
            .text("Country", study.country())
            .text("Setting", study.setting())
            .text("Recruited", recruited(study))
            .word("Consecutive patients", study.consecutive())
            .word("Read by someone independent", study.assessorIndependent())
            .text("Funding and interests", study.funding())
            .text("Definition of union", study.unionDefinition())
            .text("Definition of infection", study.infectionDefinition())
            .text("Shares patients with cohort", study.cohort())
            .text("Same study as", joined(study.sameStudyAs()))
            .text("Trial register", study.citation().register())
            .text("PubMed number", study.citation().pmid())
            .text("Other spellings", joined(study.citation().otherSpellings()))
            .word("Extraction", Optional.of(study.status()));
    baseline(facts, study.whole(), " (all groups together)");
    provenance(facts, study.provenance());
    facts.text("Note", study.note()).missing(study.missing()).missing(study.wholeMissing());
    return facts.list();
  }

  /** What is recorded of one arm. */
  public static List<Fact> of(Arm arm) {
    Fact.Collector facts =
        new Fact.Collector()
            .text("Method", Optional.of(arm.method().principal().label()))
            .text(
                "Together with",
                joined(arm.method().parts().stream().map(MethodPart::label).toList()))
            .text("Method in the paper's words", arm.method().words());
    baseline(facts, arm.baseline(), "");
    details(facts, arm.details(), DetailKind.ofMethods());
    provenance(facts, arm.provenance());
    facts.text("Note", arm.note()).missing(arm.missing());
    return facts.list();
  }

  private static void baseline(Fact.Collector facts, Baseline baseline, String of) {
    facts
        .number("Patients" + of, baseline.patients())
        .number("Limbs" + of, baseline.limbs())
        .number("Defects" + of, baseline.defects())
        .summary("Age" + of, baseline.age())
        .count("Men and boys" + of, baseline.male())
        .count("Smokers" + of, baseline.smokers())
        .count("With diabetes" + of, baseline.diabetics())
        .count("Infected at the start" + of, baseline.infected())
        .word("Infected at the start, in words" + of, baseline.infectedAnswer())
        .text("Bones" + of, bones(baseline))
        .text("Bone in the paper's words" + of, baseline.boneWords())
        .text(
            "Part of the bone" + of,
            joined(baseline.segments().stream().map(Segments::name).toList()))
        .text("Missing bone in the paper's words" + of, baseline.defect().flatMap(d -> d.words()))
        .summary("Followed" + of, baseline.followUp())
        .number("Lost to follow-up" + of, baseline.lostToFollowUp());
    details(facts, baseline.characteristics(), DetailKind.ofPatients());
  }

  private static void details(
      Fact.Collector facts, Map<String, Detail> details, Vocabulary<DetailKind> vocabulary) {
    details.forEach(
        (code, detail) ->
            facts.text(
                vocabulary.find(code).map(Coded::label).orElse(code), Optional.of(detail.words())));
  }

  private static void provenance(Fact.Collector facts, Provenance provenance) {
    facts
        .text("Where it stands in the paper", provenance.place())
        .text("The paper's words", provenance.words());
  }

  private static Optional<String> joined(List<String> words) {
    return words.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", words));
  }

  private static Optional<String> recruited(Study study) {
    Optional<String> from = study.recruitmentFrom().map(PartialDate::toString);
    Optional<String> to = study.recruitmentTo().map(PartialDate::toString);
    if (from.isEmpty() && to.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(from.orElse("not stated") + " to " + to.orElse("not stated"));
  }

  private static Optional<String> bones(Baseline baseline) {
    if (baseline.bones().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        baseline.bones().stream().map(Facts::bone).collect(Collectors.joining(", ")));
  }

  private static String bone(BoneCount bone) {
    return bone.bone().label() + (bone.count().isPresent() ? " " + bone.count().getAsInt() : "");
  }
}
