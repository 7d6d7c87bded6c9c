package gapwise.server.page;

import gapwise.answer.EvidenceGrid;
import gapwise.answer.HeadToHead;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Counts for the map, each made once for a state of the evidence base. Safe for use by many
 * threads.
 */
final class MapCounts {
  /** Requests whose counts are kept; a count is a few kilobytes. */
  private static final int KEPT = 200;

  private final StudySearch search;
  private final Latest<EvidenceGrid> grids;
  private final Latest<HeadToHead> comparisons;

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

  private static final class Latest<T> {
    private final Function<SearchRequest, T> count;
    private final Map<SearchRequest, Counted<T>> kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<SearchRequest, Counted<T>> eldest) {
            return size() > KEPT;
          }
        };
    private long change = -1;

    Latest(Function<SearchRequest, T> count) {
      this.count = count;
    }

    T at(long now, SearchRequest request) {
      return kept(now, request).get();
    }

    private synchronized Counted<T> kept(long now, SearchRequest request) {
      if (now != change) {
        kept.clear();
        change = now;
      }
      return kept.computeIfAbsent(request, asked -> new Counted<>(() -> count.apply(asked)));
    }
  }

  /** Counts once; who asks for the same meanwhile waits, who asks for something else does not. */
  private static final class Counted<T> {
    private final Supplier<T> count;
    private Optional<T> found = Optional.empty();

    Counted(Supplier<T> count) {
      this.count = count;
    }

    synchronized T get() {
      if (found.isEmpty()) {
        found = Optional.of(count.get());
      }
      return found.get();
    }
  }
}
