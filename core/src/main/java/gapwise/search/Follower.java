package gapwise.search;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.RecordDamagedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.Term;

/**
 * Carries changes of the store into the index. Not thread-safe: those who call take turns.
 *
 * <p>The index is written to disk now and then only; after a crash it goes on from the change that
 * was last written, since the store has them all.
 */
final class Follower {
  /** Changes after which the index is written to disk, so that a crash costs a few seconds. */
  private static final long CHANGES_BETWEEN_COMMITS = 2000;

  private final DocumentStore store;
  private final IndexedKinds kinds;
  private final IndexWriter writer;
  private final Consumer<String> messages;
  private FollowedTo reached;
  private long committed;
  private boolean news = true;

  Follower(
      DocumentStore store,
      IndexedKinds kinds,
      IndexWriter writer,
      FollowedTo reached,
      Consumer<String> messages) {
    this.store = store;
    this.kinds = kinds;
    this.writer = writer;
    this.messages = messages;
    this.reached = reached;
    this.committed = reached.change();
  }

  long reached() {
    return reached.change();
  }

  /**
   * Takes in every change since the last one.
   *
   * @return false when the change log is not the one that the index has followed, so that it must
   *     be rebuilt
   */
  boolean catchUp() throws IOException {
    if (reached.change() == 0) {
      store.changesAfter(0, this::take);
    } else if (!continues()) {
      return false;
    }
    if (reached.change() - committed >= CHANGES_BETWEEN_COMMITS) {
      commit();
    }
    return true;
  }

  private boolean continues() {
    FollowedTo before = reached;
    boolean[] same = {false};
    store.changesAfter(
        before.change() - 1,
        version -> {
          if (version.change() == before.change()) {
            same[0] = FollowedTo.at(version).equals(before);
          } else if (same[0]) {
            take(version);
          }
        });
    return same[0];
  }

  /** Builds the whole index from the documents as they stand. */
  void rebuild() throws IOException {
    writer.deleteAll();
    reached = FollowedTo.NOTHING;
    FollowedTo[] last = {FollowedTo.NOTHING};
    store.forEachLatest(
        kinds.studies(),
        version -> {
          put(version);
          last[0] = version.change() > last[0].change() ? FollowedTo.at(version) : last[0];
        });
    reached = last[0];
    news = true;
    catchUp();
    commit();
  }

  /** Whether anything was taken in, since it was last asked, of which what is shown tells. */
  boolean hadNews() {
    boolean had = news;
    news = false;
    return had;
  }

  private void take(DocumentVersion version) {
    news |= !kinds.silent().contains(version.id().kind());
    if (version.id().kind().equals(kinds.studies())) {
      put(version);
    }
    reached = FollowedTo.at(version);
  }

  private void put(DocumentVersion version) {
    Term study = new Term(ArmDocuments.STUDY, version.id().key());
    try {
      if (version.isDeletion()) {
        writer.deleteDocuments(study);
      } else {
        writer.updateDocuments(study, ArmDocuments.of(read(version)));
      }
    } catch (IllegalArgumentException | RecordDamagedException unreadable) {
      deleteUnreadable(version, study, unreadable);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Study read(DocumentVersion version) {
    Study study = EvidenceJson.read(version.json().orElseThrow());
    if (!study.id().equals(version.id().key())) {
      throw new IllegalArgumentException("it holds the study " + study.id());
    }
    return study;
  }

  private void deleteUnreadable(DocumentVersion version, Term study, RuntimeException unreadable) {
    messages.accept(
        "The study "
            + version.id().key()
            + ", version "
            + version.version()
            + ", cannot be read and is not searched: "
            + unreadable.getMessage());
    try {
      writer.deleteDocuments(study);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes the index to disk together with how far it has come. */
  void commit() throws IOException {
    writer.setLiveCommitData(reached.toCommit().entrySet());
    writer.commit();
    committed = reached.change();
  }
}
