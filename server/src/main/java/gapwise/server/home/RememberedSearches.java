package gapwise.server.home;

import gapwise.search.IndexedArm;
import gapwise.search.LengthNotSaid;
import gapwise.search.LooseWords;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Remembers the latest answers of the search in one state of the evidence base, since people open
 * the same first pages and go back to them. Safe for use by many threads.
 */
final class RememberedSearches implements StudySearch {
  /** An answer is a few kilobytes. */
  private static final int MOST = 200;

  /** Longer answers are those of exports, which nobody asks for again. */
  private static final int MOST_HITS = 100;

  private final StudySearch search;
  private final Remembered<Asked, SearchAnswer> latest;

  private record Asked(SearchRequest request, Order order, int offset, int limit) {}

  RememberedSearches(StudySearch search) {
    this.search = search;
    this.latest =
        new Remembered<>(
            MOST,
            asked -> search.search(asked.request(), asked.order(), asked.offset(), asked.limit()));
  }

  @Override
  public SearchAnswer search(SearchRequest request, Order order, int offset, int limit) {
    return limit > MOST_HITS
        ? search.search(request, order, offset, limit)
        : latest.of(new Asked(request, order, offset, limit));
  }

  @Override
  public List<SearchAnswer.ArmHit> everyArm(SearchRequest request) {
    return search.everyArm(request);
  }

  @Override
  public List<SearchAnswer.ArmHit> everyArmOrNotSaid(SearchRequest request) {
    return search.everyArmOrNotSaid(request);
  }

  @Override
  public SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor) {
    return search.eachArm(request, visitor);
  }

  @Override
  public int count(SearchRequest request) {
    return search.count(request);
  }

  @Override
  public LengthNotSaid lengthNotSaid(SearchRequest request, SearchAnswer answer) {
    return search.lengthNotSaid(request, answer);
  }

  @Override
  public Optional<String> didYouMean(SearchRequest request) {
    return search.didYouMean(request);
  }

  @Override
  public Optional<LooseWords> looseWords(String text) {
    return search.looseWords(text);
  }

  @Override
  public boolean holdsInvented() {
    return search.holdsInvented();
  }

  @Override
  public long change() {
    return search.change();
  }
}
