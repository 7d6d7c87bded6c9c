package gapwise.server.page.map;

import gapwise.answer.grid.EvidenceGrid;
import gapwise.answer.grid.HeadToHead;
import gapwise.answer.grid.InfectionGrids;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.PoolableArms;
import gapwise.server.home.Remembered;
import java.util.List;
import java.util.Optional;

/**
 * Counts for the map, each made once, in one pass over the index with the counts beside the
 * filters. Safe for use by many threads.
 */
final class MapCounts {
  private static final int KEPT = 200;

  /** The answers on infection of which a map names the emptiest questions. */
  static final List<YesOrNo> TOLD_APART = List.of(YesOrNo.YES, YesOrNo.NO);

  private final StudySearch search;
  private final Remembered<SearchRequest, Counts<InfectionGrids>> grids;
  private final Remembered<SearchRequest, Counts<HeadToHead>> comparisons;

  /**
   * What was counted.
   *
   * @param of of the map
   * @param answer of the same search, with the counts beside the filters
   * @param apart how many groups were kept apart and are not among them; empty where none was
   */
  record Counts<T>(T of, SearchAnswer answer, Optional<String> apart) {}

  MapCounts(StudySearch search) {
    this.search = search;
    grids = new Remembered<>(KEPT, this::countGrids);
    comparisons = new Remembered<>(KEPT, this::countComparisons);
  }

  private Counts<InfectionGrids> countGrids(SearchRequest request) {
    InfectionGrids.Sum sum = new InfectionGrids.Sum(EvidenceMap.RANGES, TOLD_APART);
    PoolableArms poolable = new PoolableArms(sum);
    SearchAnswer answer = search.eachArm(request, poolable);
    return new Counts<>(sum.grids(), answer, poolable.keptApart());
  }

  private Counts<HeadToHead> countComparisons(SearchRequest request) {
    HeadToHead.Finding finding = new HeadToHead.Finding();
    PoolableArms poolable = new PoolableArms(finding);
    SearchAnswer answer = search.eachArm(request, poolable);
    return new Counts<>(finding.found(), answer, poolable.keptApart());
  }

  /** Methods by size, of all and apart by infection at the start. */
  Counts<InfectionGrids> grids(SearchRequest request) {
    return grids.of(request);
  }

  /** Methods by size of everything there is. */
  EvidenceGrid everything() {
    return grids(SearchRequest.EVERYTHING).of().all();
  }

  /** Methods side by side. */
  Counts<HeadToHead> comparisons(SearchRequest request) {
    return comparisons.of(request);
  }
}
