package gapwise.evidence.rule;

import gapwise.evidence.Study;
import java.util.List;

/** A rule about studies beside each other; its work grows linearly with their number. */
public interface CollectionRule {
  /**
   * @param fresh studies to judge
   * @param known studies to compare them with besides
   */
  void check(List<Study> fresh, List<Study> known, Findings findings);
}
