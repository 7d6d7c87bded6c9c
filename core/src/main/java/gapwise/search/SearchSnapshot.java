package gapwise.search;

import gapwise.search.SearchAnswer.ArmHit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.search.IndexSearcher;

/**
 * The search in one state of the index, whatever is written meanwhile. It holds files of the index
 * open: who uses it beyond the next change takes hold of it by {@link #retain} and lets go by
 * {@link #release}.
 */
public final class SearchSnapshot implements StudySearch {
  private final DirectoryReader reader;
  private final Analyzer analyzer;
  private final IndexSearcher searcher;
  private final HeldColumns columns;
  private final long change;
  private final boolean invented;

  /**
   * @param reader the state, of which one hold is handed over
   * @param columns of the segments of the index, shared by all its states
   * @param change number of the last change that it shows
   */
  SearchSnapshot(DirectoryReader reader, HeldColumns columns, Analyzer analyzer, long change)
      throws IOException {
    this.reader = reader;
    this.analyzer = analyzer;
    this.searcher = new IndexSearcher(reader);
    this.columns = columns;
    this.change = change;
    this.invented = new Finder(searcher, columns, analyzer).holdsInvented();
  }

  /**
   * The state after changes that concern no arm: the same one under a later number.
   *
   * @param later number of the last change
   */
  SearchSnapshot unchangedAt(long later) throws IOException {
    reader.incRef();
    return new SearchSnapshot(reader, columns, analyzer, later);
  }

  DirectoryReader reader() {
    return reader;
  }

  /** Takes hold of this state; false when it has been let go of, so that there is a later one. */
  public boolean retain() {
    return reader.tryIncRef();
  }

  /** Lets go of this state once. */
  public void release() {
    try {
      reader.decRef();
    } catch (IOException e) {
      throw new UncheckedIOException("Files of the search index cannot be closed", e);
    }
  }

  @Override
  public SearchAnswer search(SearchRequest request, Order order, int offset, int limit) {
    Objects.requireNonNull(order, "order");
    if (offset < 0 || limit < 0) {
      throw new IllegalArgumentException(
          "offset and limit must be 0 or more, were " + offset + " and " + limit);
    }
    return ask(finder -> finder.answer(request, order, offset, limit));
  }

  @Override
  public List<ArmHit> everyArm(SearchRequest request) {
    return ask(finder -> finder.everyArm(request));
  }

  @Override
  public List<ArmHit> everyArmOrNotSaid(SearchRequest request) {
    return ask(finder -> finder.everyArmOrNotSaid(request));
  }

  @Override
  public SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor) {
    return ask(finder -> finder.eachArm(request, visitor));
  }

  @Override
  public int count(SearchRequest request) {
    return ask(finder -> finder.count(request));
  }

  @Override
  public LengthNotSaid lengthNotSaid(SearchRequest request, SearchAnswer answer) {
    return ask(finder -> finder.lengthNotSaid(request, answer));
  }

  @Override
  public Optional<String> didYouMean(SearchRequest request) {
    return ask(finder -> finder.spelling(request));
  }

  @Override
  public Optional<LooseWords> looseWords(String text) {
    return ask(finder -> finder.looseWords(text));
  }

  @Override
  public boolean holdsInvented() {
    return invented;
  }

  @Override
  public long change() {
    return change;
  }

  private <T> T ask(Question<T> question) {
    try {
      return question.ask(new Finder(searcher, columns, analyzer));
    } catch (IOException e) {
      throw new UncheckedIOException("The search index cannot be read", e);
    }
  }

  @FunctionalInterface
  private interface Question<T> {
    T ask(Finder finder) throws IOException;
  }
}
