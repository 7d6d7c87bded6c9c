package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about the numbers of any quantity. */
public interface SummaryRule extends StudyRule {
  void check(SummaryAt at, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    SummaryAt.of(study).forEach(at -> check(at, findings));
  }
}
