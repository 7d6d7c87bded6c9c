package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about any count of so many of so many. */
public interface CountRule extends StudyRule {
  void check(CountAt at, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    CountAt.of(study).forEach(at -> check(at, findings));
  }
}
