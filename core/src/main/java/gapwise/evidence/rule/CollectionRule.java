package gapwise.evidence.rule;

import gapwise.evidence.Study;
import java.util.List;
import java.util.function.Predicate;

/** A rule about studies beside each other; its work grows linearly with their number. */
public interface CollectionRule {
  /**
   * @param fresh studies to judge
   * @param known studies to compare them with besides
   */
  void check(List<Study> fresh, List<Study> known, Findings findings);

  /**
   * Tells which known studies can matter beside the fresh ones, so that of a large evidence base
   * only those need be held in memory. Leaving all others away changes no finding.
   */
  Predicate<Study> near(List<Study> fresh);
}
