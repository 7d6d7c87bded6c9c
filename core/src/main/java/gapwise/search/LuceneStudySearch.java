package gapwise.search;

import gapwise.search.SearchAnswer.ArmHit;
import gapwise.store.DocumentStore;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.SearcherManager;

/**
 * The search of one process, on an index derived from its store. A write to the store is answered
 * only after this index shows it. An index that is missing, damaged, of another format, or of
 * another store is built anew when it is opened.
 */
public final class LuceneStudySearch implements StudySearch, AutoCloseable {
  private final Analyzer analyzer;
  private final IndexWriter writer;
  private final SearcherManager searchers;
  private final Follower follower;
  private final Object turn = new Object();
  private volatile long shown;
  private volatile boolean invented;
  private volatile boolean closed;

  private LuceneStudySearch(Analyzer analyzer, IndexWriter writer, Follower follower)
      throws IOException {
    this.analyzer = analyzer;
    this.writer = writer;
    this.follower = follower;
    this.searchers = new SearcherManager(writer, null);
  }

  /**
   * Opens the index and brings it up to the store.
   *
   * @param folder folder of the index alone; whatever else lies in it may be deleted
   * @param store the truth
   * @param kind kind of the documents that hold studies
   * @param messages takes a sentence for people when the index had to be rebuilt, or a study cannot
   *     be read
   * @throws UncheckedIOException when the folder cannot be used
   */
  public static LuceneStudySearch open(
      Path folder, DocumentStore store, String kind, Consumer<String> messages) {
    Objects.requireNonNull(messages, "messages");
    Analyzer analyzer = Wording.analyzer();
    IndexFolder index = new IndexFolder(folder, analyzer);
    try {
      Optional<Reached> sound = index.soundIndex();
      IndexWriter writer = sound.isPresent() ? index.append() : index.createAnew();
      try {
        Follower follower =
            new Follower(store, kind, writer, sound.orElse(Reached.NOTHING), messages);
        LuceneStudySearch search = new LuceneStudySearch(analyzer, writer, follower);
        // Where nothing was ever kept, an index that is not there is no news.
        boolean news = store.lastChange() > 0;
        search.start(sound.isPresent(), news ? messages : message -> {});
        store.onWrite(written -> search.catchUp());
        search.catchUp();
        return search;
      } catch (IOException | RuntimeException failure) {
        writer.rollback();
        throw failure;
      }
    } catch (IOException e) {
      throw new UncheckedIOException("The search index in " + folder + " cannot be opened", e);
    }
  }

  private void start(boolean sound, Consumer<String> messages) throws IOException {
    synchronized (turn) {
      if (!sound) {
        follower.rebuild();
        messages.accept(
            "The search index was missing, damaged or of another version; it was built anew from"
                + " the records.");
      } else if (follower.catchUp()) {
        follower.commit();
      } else {
        follower.rebuild();
        messages.accept(
            "The search index belonged to other records; it was built anew from those there are.");
      }
      show();
    }
  }

  /** Takes in what the store has and the index has not; then it is shown. */
  public void catchUp() {
    synchronized (turn) {
      if (closed) {
        return;
      }
      try {
        if (!follower.catchUp()) {
          follower.rebuild();
        }
        show();
      } catch (IOException e) {
        throw new UncheckedIOException(
            "The records are saved, but the search index could not follow them and shows an older"
                + " state. Make room on the disk and start the program again.",
            e);
      }
    }
  }

  /** Builds the index anew from the store; searches see the old one until it is done. */
  public void rebuild() {
    synchronized (turn) {
      try {
        follower.rebuild();
        show();
      } catch (IOException e) {
        throw new UncheckedIOException("The search index could not be built anew", e);
      }
    }
  }

  private void show() throws IOException {
    searchers.maybeRefreshBlocking();
    invented = ask(Finder::holdsInvented);
    shown = follower.reached();
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
  public SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor) {
    return ask(finder -> finder.eachArm(request, visitor));
  }

  @Override
  public int count(SearchRequest request) {
    return ask(finder -> finder.count(request));
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
  public long shownChange() {
    return shown;
  }

  private <T> T ask(Question<T> question) {
    try {
      IndexSearcher searcher = searchers.acquire();
      try {
        return question.ask(new Finder(searcher, analyzer));
      } finally {
        searchers.release(searcher);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("The search index cannot be read", e);
    }
  }

  @FunctionalInterface
  private interface Question<T> {
    T ask(Finder finder) throws IOException;
  }

  /** Writes the index to disk and lets go of it. Writes to the store are not followed any more. */
  @Override
  public void close() {
    synchronized (turn) {
      if (closed) {
        return;
      }
      closed = true;
      try {
        searchers.close();
        follower.commit();
        writer.close();
        writer.getDirectory().close();
      } catch (IOException e) {
        throw new UncheckedIOException(
            "The search index could not be written; it will catch up when it is opened again", e);
      }
    }
  }
}
