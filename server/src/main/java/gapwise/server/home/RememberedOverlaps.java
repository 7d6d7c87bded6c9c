package gapwise.server.home;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.CohortLinks;
import gapwise.cohort.DecisionJson;
import gapwise.cohort.OverlapSearch;
import gapwise.curation.StudiesAt;
import java.util.List;
import java.util.Optional;

/**
 * Studies of one state of the evidence base that may tell of the same patients, looked for when
 * first asked, and what persons settled of them.
 */
public final class RememberedOverlaps {
  private final StudiesAt studies;
  private final List<CohortDecision> decisions;
  private Optional<OverlapSearch.Overlaps> found = Optional.empty();

  RememberedOverlaps(StudiesAt studies) {
    this.studies = studies;
    this.decisions = studies.settledCohorts().stream().map(DecisionJson::read).toList();
  }

  /** What persons settled. */
  public List<CohortDecision> decisions() {
    return decisions;
  }

  /** What follows from it for selections. */
  public CohortLinks links() {
    return CohortLinks.of(decisions);
  }

  /** What is left to ask. */
  public synchronized OverlapSearch.Overlaps left() {
    if (found.isEmpty()) {
      OverlapSearch search = new OverlapSearch();
      studies.forEachSound(kept -> search.add(kept.study()));
      found = Optional.of(search.find(decisions));
    }
    return found.get();
  }
}
