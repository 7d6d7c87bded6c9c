package gapwise.server.home;

import gapwise.search.IndexedArm;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Remembers the latest answers of a search until the evidence base changes, since people open the
 * same first pages and go back to them. Safe for use by many threads.
 */
final class LatestSearches implements StudySearch {
  /** An answer is a few kilobytes. */
  private static final int MOST = 200;

  private final StudySearch search;
  private final Map<Asked, Known> latest =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Known> eldest) {
          return size() > MOST;
        }
      };

  private record Asked(SearchRequest request, Order order, int offset, int limit) {}

  private record Known(long change, SearchAnswer answer) {}

  LatestSearches(StudySearch search) {
    this.search = search;
  }

  @Override
  public SearchAnswer search(SearchRequest request, Order order, int offset, int limit) {
    Asked asked = new Asked(request, order, offset, limit);
    long change = search.shownChange();
    Optional<SearchAnswer> known = known(asked, change);
    if (known.isPresent()) {
      return known.get();
    }
    SearchAnswer answer = search.search(request, order, offset, limit);
    synchronized (latest) {
      latest.put(asked, new Known(change, answer));
    }
    return answer;
  }

  private Optional<SearchAnswer> known(Asked asked, long change) {
    synchronized (latest) {
      return Optional.ofNullable(latest.get(asked))
          .filter(known -> known.change() == change)
          .map(Known::answer);
    }
  }

  @Override
  public List<SearchAnswer.ArmHit> everyArm(SearchRequest request) {
    return search.everyArm(request);
  }

  @Override
  public void eachArm(SearchRequest request, Consumer<IndexedArm> visitor) {
    search.eachArm(request, visitor);
  }

  @Override
  public int count(SearchRequest request) {
    return search.count(request);
  }

  @Override
  public Optional<String> didYouMean(SearchRequest request) {
    return search.didYouMean(request);
  }

  @Override
  public boolean holdsInvented() {
    return search.holdsInvented();
  }

  @Override
  public long shownChange() {
    return search.shownChange();
  }
}
