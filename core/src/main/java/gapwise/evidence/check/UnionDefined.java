package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.StudyRule;

/** Union reported without a definition and without a reason why, once for each study. */
final class UnionDefined implements StudyRule {
  @Override
  public void check(Study study, Findings findings) {
    boolean given =
        study.unionDefinition().isPresent() || study.missing().containsKey("union_definition");
    boolean undefined =
        ReportAt.counting(study).stream()
            .filter(at -> at.code().equals("union") || at.code().endsWith("-union"))
            .filter(at -> at.report().outcome().isEvent())
            .anyMatch(
                at ->
                    at.report().definition().isEmpty()
                        && !at.report().missing().containsKey("definition"));
    if (!given && undefined) {
      findings.doubtful(
          new RecordPart.OfStudy(study.id(), "union_definition"),
          "union-undefined",
          "Union is reported but not defined. Write the paper's definition, or NR if it has none.");
    }
  }
}
