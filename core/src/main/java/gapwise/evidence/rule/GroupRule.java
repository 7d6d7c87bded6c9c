package gapwise.evidence.rule;

import gapwise.evidence.Study;

/** A rule about the patients of one arm, or of all arms together. */
public interface GroupRule extends StudyRule {
  void check(Group group, Findings findings);

  @Override
  default void check(Study study, Findings findings) {
    Group.of(study).forEach(group -> check(group, findings));
  }
}
