package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about one study by itself. */
public interface StudyRule {
  void check(Study study, Findings findings);
}
