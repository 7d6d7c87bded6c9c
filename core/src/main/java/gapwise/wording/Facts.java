package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Detail;
import gapwise.evidence.KeptApart;
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
            .word(say("wording.fact-kind-report"), Optional.of(study.reportKind()))
            .word(say("wording.fact-design"), study.design())
            .text(say("wording.fact-design-papers-words"), study.designWords())
            .text(say("wording.fact-centres"), joined(study.centres()))
            .text(say("wording.fact-country"), study.country())
            .text(say("wording.fact-setting"), study.setting())
            .text(say("wording.fact-recruited"), recruited(study))
            .word(say("wording.fact-consecutive-patients"), study.consecutive())
            .word(say("wording.fact-read-someone-independent"), study.assessorIndependent())
            .text(say("wording.fact-funding-and-interests"), study.funding())
            .text(say("wording.fact-definition-union"), study.unionDefinition())
            .text(
                say("wording.fact-definition-union-kinds"),
                joined(study.unionDefinitionKinds().stream().map(Coded::label).toList()))
            .text(say("wording.fact-definition-infection"), study.infectionDefinition())
            .text(
                say("wording.fact-definition-infection-kinds"),
                joined(study.infectionDefinitionKinds().stream().map(Coded::label).toList()))
            .text(say("wording.fact-shares-patients-with-cohort"), study.cohort())
            .text(say("wording.fact-same-study-as"), joined(study.sameStudyAs()))
            .text(say("wording.fact-overlap-suspected"), joined(study.overlapSuspectedWith()))
            .word(say("wording.fact-read-as"), study.readAs())
            .text(say("wording.fact-read-at"), study.readAt())
            .text(say("wording.fact-trial-register"), study.citation().register())
            .text(say("wording.fact-pubmed-number"), study.citation().pmid())
            .text(say("wording.fact-other-spellings"), joined(study.citation().otherSpellings()))
            .word(say("wording.fact-extraction"), Optional.of(study.status()));
    baseline(facts, study.whole(), true);
    provenance(facts, study.provenance());
    facts
        .text(say("wording.fact-note"), study.note())
        .missing(study.missing())
        .missing(study.wholeMissing());
    return facts.list();
  }

  /** What is recorded of one arm. */
  public static List<Fact> of(Arm arm) {
    Fact.Collector facts =
        new Fact.Collector()
            .text(say("wording.fact-method"), Optional.of(arm.method().principal().label()))
            .text(
                say("wording.fact-together-with"),
                joined(arm.method().parts().stream().map(MethodPart::label).toList()))
            .text(say("wording.fact-method-papers-words"), arm.method().words())
            .text(say("wording.fact-kept-apart"), arm.keptApart().map(Facts::keptApart));
    baseline(facts, arm.baseline(), false);
    details(facts, arm.details(), DetailKind.ofMethods());
    provenance(facts, arm.provenance());
    facts.text(say("wording.fact-note"), arm.note()).missing(arm.missing());
    return facts.list();
  }

  private static String keptApart(KeptApart kept) {
    String reason = kept.reason().label();
    return kept.words()
        .map(words -> say("wording.kept-apart-words", Map.of("reason", reason, "words", words)))
        .orElse(reason);
  }

  private static String of(boolean all, String name) {
    return all ? say("wording.fact-of-all-groups", Map.of("name", name)) : name;
  }

  private static void baseline(Fact.Collector facts, Baseline baseline, boolean all) {
    facts
        .number(of(all, say("wording.fact-patients")), baseline.patients())
        .number(of(all, say("wording.fact-limbs")), baseline.limbs())
        .number(of(all, say("wording.fact-defects")), baseline.defects())
        .summary(of(all, say("wording.fact-age")), baseline.age())
        .count(of(all, say("wording.fact-men-and-boys")), baseline.male())
        .count(of(all, say("wording.fact-smokers")), baseline.smokers())
        .count(of(all, say("wording.fact-with-diabetes")), baseline.diabetics())
        .count(of(all, say("wording.fact-infected-start")), baseline.infected())
        .word(of(all, say("wording.fact-infected-start-words")), baseline.infectedAnswer())
        .text(of(all, say("wording.fact-bones")), bones(baseline))
        .text(of(all, say("wording.fact-bone-papers-words")), baseline.boneWords())
        .text(
            of(all, say("wording.fact-part-bone")),
            joined(baseline.segments().stream().map(Segments::name).toList()))
        .text(
            of(all, say("wording.fact-missing-bone-papers-words")),
            baseline.defect().flatMap(d -> d.words()))
        .summary(of(all, say("wording.fact-followed")), baseline.followUp())
        .number(of(all, say("wording.fact-lost-followup")), baseline.lostToFollowUp());
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
        .text(say("wording.fact-where-stands-paper"), provenance.place())
        .text(say("wording.fact-papers-words"), provenance.words());
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
    String notStated = say("wording.not-stated");
    return Optional.of(
        say(
            "wording.recruited",
            Map.of("from", from.orElse(notStated), "to", to.orElse(notStated))));
  }

  private static Optional<String> bones(Baseline baseline) {
    if (baseline.bones().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        baseline.bones().stream().map(Facts::bone).collect(Collectors.joining(", ")));
  }

  private static String bone(BoneCount bone) {
    return bone.count().isPresent()
        ? say(
            "wording.category",
            Map.of("name", bone.bone().label(), "number", bone.count().getAsInt()))
        : bone.bone().label();
  }
}
