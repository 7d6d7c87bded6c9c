package gapwise.evidence.check;

import gapwise.evidence.Study;

/** A rule about one reported outcome. */
interface ReportRule extends StudyRule {
  void check(ReportAt at, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    ReportAt.of(study).forEach(at -> check(at, findings));
  }
}
