package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about one reported outcome. */
public interface ReportRule extends StudyRule {
  void check(ReportAt at, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    ReportAt.of(study).forEach(at -> check(at, findings));
  }
}
