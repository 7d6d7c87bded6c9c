package gapwise.search;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;

/**
 * The state of an index that is shown; a new one replaces it in one step. Its owner guards it:
 * every method is called under the owner's lock.
 */
final class ShownState {
  private final Analyzer analyzer;
  private final HeldColumns columns = new HeldColumns();
  private final Consumer<SearchSnapshot> shows;
  private Optional<SearchSnapshot> shown = Optional.empty();

  /**
   * @param shows takes each new state; the state before is let go of when it returns
   */
  ShownState(Analyzer analyzer, Consumer<SearchSnapshot> shows) {
    this.analyzer = analyzer;
    this.shows = shows;
  }

  /**
   * Shows what a writer has taken in.
   *
   * @param change number of the last change taken in
   */
  void show(IndexWriter writer, long change) throws IOException {
    SearchSnapshot next = snapshot(writer, change);
    try {
      shows.accept(next);
    } catch (RuntimeException failure) {
      next.release();
      throw failure;
    }
    release();
    shown = Optional.of(next);
  }

  private SearchSnapshot snapshot(IndexWriter writer, long change) throws IOException {
    if (shown.isEmpty()) {
      return new SearchSnapshot(DirectoryReader.open(writer), columns, analyzer, change);
    }
    Optional<DirectoryReader> changed =
        Optional.ofNullable(DirectoryReader.openIfChanged(shown.get().reader(), writer));
    return changed.isPresent()
        ? new SearchSnapshot(changed.get(), columns, analyzer, change)
        : shown.get().unchangedAt(change);
  }

  SearchSnapshot get() {
    return shown.orElseThrow(() -> new IllegalStateException("the index is closed"));
  }

  /** Lets go of what is shown, if anything is. */
  void release() {
    shown.ifPresent(SearchSnapshot::release);
    shown = Optional.empty();
  }
}
