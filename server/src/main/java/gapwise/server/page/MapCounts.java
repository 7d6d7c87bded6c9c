package gapwise.server.page;

import gapwise.answer.EvidenceGrid;
import gapwise.answer.HeadToHead;
import gapwise.answer.InfectionGrids;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.home.Latest;

/**
 * Counts for the map, each made once for a state of the evidence base. Safe for use by many
 * threads.
 */
final class MapCounts {
  private static final int KEPT = 200;

  private final StudySearch search;
  private final Latest<SearchRequest, InfectionGrids> grids;
  private final Latest<SearchRequest, HeadToHead> comparisons;

  MapCounts(StudySearch search) {
    this.search = search;
    grids = new Latest<>(KEPT, request -> InfectionGrids.of(search, request, EvidenceMap.RANGES));
    comparisons = new Latest<>(KEPT, request -> HeadToHead.of(search, request));
  }

  EvidenceGrid grid(SearchRequest request) {
    return grids(request).all();
  }

  /** The same, apart by infection at the start too. */
  InfectionGrids grids(SearchRequest request) {
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
