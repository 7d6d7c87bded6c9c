package gapwise.evidence.check;

import gapwise.evidence.Study;

/** A rule about one study by itself. */
interface StudyRule {
  void check(Study study, Findings findings);
}
