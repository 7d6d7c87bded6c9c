package gapwise.search;

import gapwise.store.DocumentStore;
import gapwise.store.StoreUnusableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.IndexWriter;

/**
 * The index of one process, derived from its store and following it. A write to the store is
 * answered only after this index shows it, as a new {@link SearchSnapshot} that replaces the one
 * before in one step.
 *
 * <p>The store decides what is so. An index that is missing, damaged, of another format or of
 * another store is built anew when it is opened. One that cannot follow later (a full disk, a
 * folder that is gone) goes on showing the last state it reached, says so by {@link #behind}, and
 * is built anew: at once, then with every write, and now and then by itself until that succeeds.
 */
public final class StudyIndex implements AutoCloseable {
  private final DocumentStore store;
  private final IndexedKinds kinds;
  private final IndexFolder folder;
  private final Analyzer analyzer = Wording.analyzer();
  private final Consumer<String> messages;
  private final ShownState shown;

  private final Object turn = new Object();
  private final LaterTry again = new LaterTry(turn, this::tryAgain);
  private Optional<Following> following = Optional.empty();
  private boolean closed;
  private volatile Optional<String> behind = Optional.empty();

  /** A writer and what carries changes into it; both are replaced together. */
  private record Following(IndexWriter writer, Follower follower) {}

  private StudyIndex(
      Path folder,
      DocumentStore store,
      IndexedKinds kinds,
      Consumer<String> messages,
      Consumer<SearchSnapshot> shows) {
    this.store = store;
    this.kinds = kinds;
    this.folder = new IndexFolder(folder, analyzer);
    this.messages = messages;
    this.shown = new ShownState(analyzer, shows);
  }

  /**
   * Opens the index and brings it up to the store.
   *
   * @param folder folder of the index alone; whatever else lies in it may be deleted
   * @param store the truth
   * @param kinds kinds of the documents that it follows
   * @param messages takes a sentence for people when the index had to be rebuilt, cannot follow, or
   *     a study cannot be read
   * @param shows takes each new state, one at a time and before the write that made it is answered;
   *     the state before is let go of when it returns
   * @throws UncheckedIOException when the folder cannot be used
   */
  public static StudyIndex open(
      Path folder,
      DocumentStore store,
      IndexedKinds kinds,
      Consumer<String> messages,
      Consumer<SearchSnapshot> shows) {
    Objects.requireNonNull(messages, "messages");
    Objects.requireNonNull(shows, "shows");
    StudyIndex index = new StudyIndex(folder, store, kinds, messages, shows);
    try {
      index.start();
    } catch (IOException e) {
      index.giveUp();
      throw new UncheckedIOException("The search index in " + folder + " cannot be opened", e);
    } catch (RuntimeException failure) {
      index.giveUp();
      throw failure;
    }
    store.onWrite(written -> index.catchUp());
    index.catchUp();
    return index;
  }

  /** The same for one who asks {@link #shown} alone. */
  public static StudyIndex open(
      Path folder, DocumentStore store, String kind, Consumer<String> messages) {
    return open(folder, store, IndexedKinds.of(kind), messages, snapshot -> {});
  }

  private void start() throws IOException {
    // Where nothing was ever kept, an index that is not there is no news.
    Consumer<String> news = store.lastChange() > 0 ? messages : message -> {};
    synchronized (turn) {
      Optional<FollowedTo> sound = folder.soundIndex();
      if (sound.isEmpty()) {
        buildAnew();
        news.accept(
            "The search index was missing, damaged or of another version; it was built anew from"
                + " the records.");
        return;
      }
      follow(folder.append(), sound.get());
      if (follower().catchUp()) {
        follower().commit();
        follower().hadNews();
        show();
      } else {
        rebuildInPlace();
        news.accept(
            "The search index belonged to other records; it was built anew from those there are.");
      }
    }
  }

  private void follow(IndexWriter writer, FollowedTo reached) {
    following =
        Optional.of(new Following(writer, new Follower(store, kinds, writer, reached, messages)));
  }

  private Follower follower() {
    return following.orElseThrow().follower();
  }

  /**
   * Takes in what the store has and the index has not; then it is shown. Never fails: where the
   * index cannot follow, {@link #behind} says why.
   */
  public void catchUp() {
    synchronized (turn) {
      if (closed) {
        return;
      }
      try {
        takeIn();
      } catch (StoreUnusableException unread) {
        // The index itself is sound and goes on from where it is.
        fallBehind(unread);
      } catch (IOException | RuntimeException failure) {
        recover(failure);
      }
    }
  }

  private void takeIn() throws IOException {
    if (following.isEmpty()) {
      buildAnew();
    } else if (follower().catchUp()) {
      if (follower().hadNews()) {
        show();
      }
    } else {
      rebuildInPlace();
    }
    upToDate();
  }

  /** What was half taken in is thrown away; a new index is made from the records. */
  private void recover(Exception failure) {
    letGo();
    try {
      buildAnew();
      upToDate();
      messages.accept(
          "The search index could not follow the records ("
              + failure
              + "); it was built anew from them.");
    } catch (IOException | RuntimeException again) {
      letGo();
      fallBehind(again);
    }
  }

  private void upToDate() {
    if (behind.isPresent()) {
      messages.accept("The search index shows all records again.");
    }
    behind = Optional.empty();
    again.succeeded();
  }

  private void fallBehind(Exception failure) {
    if (behind.isEmpty()) {
      messages.accept(
          "The search index cannot follow the records ("
              + failure
              + "). All records are saved; searches and results show an older state until there"
              + " is room on the disk and its folder can be written. It is tried again by itself.");
    }
    behind = Optional.of(String.valueOf(failure.getMessage()));
    again.schedule();
  }

  private void tryAgain() {
    if (behind.isPresent()) {
      catchUp();
    }
  }

  /** Builds the index anew from the store; searches see the old one until it is done. */
  public void rebuild() {
    synchronized (turn) {
      try {
        if (following.isEmpty()) {
          buildAnew();
        } else {
          rebuildInPlace();
        }
        upToDate();
      } catch (IOException e) {
        throw new UncheckedIOException("The search index could not be built anew", e);
      }
    }
  }

  private void buildAnew() throws IOException {
    follow(folder.createAnew(), FollowedTo.NOTHING);
    rebuildInPlace();
  }

  private void rebuildInPlace() throws IOException {
    follower().rebuild();
    follower().hadNews();
    show();
  }

  private void show() throws IOException {
    shown.show(following.orElseThrow().writer(), follower().reached());
  }

  /**
   * The state that is shown. It may be let go of with the next write: who answers others while
   * there are writers takes states from where they are shown.
   */
  public SearchSnapshot shown() {
    synchronized (turn) {
      return shown.get();
    }
  }

  /** Why the index shows an older state than the store; empty where it shows all. */
  public Optional<String> behind() {
    return behind;
  }

  private void giveUp() {
    synchronized (turn) {
      closed = true;
      again.stop();
      shown.release();
      letGo();
    }
  }

  private void letGo() {
    following.ifPresent(
        open -> {
          try {
            open.writer().rollback();
            open.writer().getDirectory().close();
          } catch (IOException unclosed) {
            messages.accept("Files of the search index could not be closed: " + unclosed);
          }
        });
    following = Optional.empty();
  }

  /** Writes the index to disk and lets go of it. Writes to the store are not followed any more. */
  @Override
  public void close() {
    synchronized (turn) {
      if (!closed) {
        following.ifPresent(open -> write());
        giveUp();
      }
    }
  }

  private void write() {
    try {
      follower().commit();
    } catch (IOException | RuntimeException unwritten) {
      messages.accept(
          "The search index could not be written ("
              + unwritten
              + "); it will catch up with the records when it is opened again.");
    }
  }
}
