package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about one published curve. */
public interface CurveRule extends StudyRule {
  void check(CurveAt at, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    CurveAt.of(study).forEach(at -> check(at, findings));
  }
}
