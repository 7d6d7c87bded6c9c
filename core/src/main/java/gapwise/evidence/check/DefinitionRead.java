package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.DefinitionKind;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A definition of which a person has not said what it asks for, though its words seem to say it.
 */
final class DefinitionRead implements StudyRule {
  /** A definition that a paper gives for several outcomes of one family is asked about once. */
  private record Wording(String family, String words) {}

  @Override
  public void check(Study study, Findings findings) {
    Set<Wording> asked = new HashSet<>();
    check(
        "Union",
        study.unionDefinition(),
        study.unionDefinitionKinds(),
        new RecordPart.OfStudy(study.id(), "union_definition_kinds"),
        asked,
        findings);
    check(
        "Infection",
        study.infectionDefinition(),
        study.infectionDefinitionKinds(),
        new RecordPart.OfStudy(study.id(), "infection_definition_kinds"),
        asked,
        findings);
    for (ReportAt at : ReportAt.counting(study)) {
      check(
          at.report().outcome().family(),
          at.report().definition(),
          at.report().definitionKinds(),
          at.part("definition_kinds"),
          asked,
          findings);
    }
  }

  private static void check(
      String family,
      Optional<String> words,
      List<DefinitionKind> chosen,
      RecordPart part,
      Set<Wording> asked,
      Findings findings) {
    List<DefinitionKind> proposed =
        words.map(text -> DefinitionKind.proposed(family, text)).orElse(List.of());
    if (chosen.isEmpty()
        && !proposed.isEmpty()
        && asked.add(new Wording(family, words.orElseThrow()))) {
      findings.proposed(
          part,
          "definition-read-from-words",
          "“"
              + words.orElseThrow()
              + "” is read as: "
              + proposed.stream().map(Coded::label).collect(Collectors.joining("; "))
              + ". Let it stand if that is meant, or choose what is in "
              + part.field()
              + ".");
    }
  }
}
