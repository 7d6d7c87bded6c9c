package gapwise.server.page;

import gapwise.answer.EvidenceGrid;
import gapwise.answer.HeadToHead;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;

/**
 * Counts for the map, each made once for a state of the evidence base. Safe for use by many
 * threads.
 */
final class MapCounts {
  private final StudySearch search;
  private final Latest<SearchRequest, EvidenceGrid> grids;
  private final Latest<SearchRequest, HeadToHead> comparisons;

  MapCounts(StudySearch search) {
    this.search = search;
    grids = new Latest<>(request -> EvidenceGrid.of(search, request, EvidenceMap.RANGES));
    comparisons = new Latest<>(request -> HeadToHead.of(search, request));
  }

  EvidenceGrid grid(SearchRequest request) {
    return grids.at(search.shownChange(), request);
  }

  HeadToHead comparisons(SearchRequest request) {
    return comparisons.at(search.shownChange(), request);
  }

  /** The number of the last change that is counted. */
  long change() {
    return search.shownChange();
  }
}
