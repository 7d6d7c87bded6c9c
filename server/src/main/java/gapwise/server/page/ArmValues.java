package gapwise.server.page;

import gapwise.evidence.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.wording.Values;
import java.util.List;
import java.util.Map;

/** Looks up what groups of patients report of an outcome. */
@FunctionalInterface
public interface ArmValues {
  /** The values of those groups that report the outcome. */
  Map<ArmHit, Values> of(Outcome outcome, SearchRequest among, List<ArmHit> arms);
}
