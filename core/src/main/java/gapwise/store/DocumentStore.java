package gapwise.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;

/**
 * The door of this room: documents with all their versions in one home folder. Nothing is ever
 * overwritten. A write that was answered is on the disk. Safe for any number of threads and
 * processes: reads see the last finished write and never wait; writes take turns. What another
 * process writes is seen by whoever asks for {@link #lastChange}; listeners hear of the writes of
 * their own process.
 *
 * <p>Where a person has to act (home in use, file damaged, disk full) a method throws {@link
 * StoreUnusableException}.
 */
public final class DocumentStore implements AutoCloseable {
  private final HomeLock homeLock;
  private final HomeOpening.Opened opened;
  private final StoreFailures failures;
  private final Clock clock;
  private final StoreReads reads;
  private final StoreWriter writer;
  private final ReentrantLock writing = new ReentrantLock();
  private final WriteListeners listeners = new WriteListeners();
  private final WorkingCopies.Door door;
  private volatile boolean closed;

  private DocumentStore(
      HomeLock homeLock, HomeOpening.Opened opened, StoreFailures failures, Clock clock) {
    this.homeLock = homeLock;
    this.opened = opened;
    this.failures = failures;
    this.clock = clock;
    this.reads = new StoreReads(opened.database(), failures);
    this.writer = new StoreWriter(opened.database(), failures);
    this.door = new WorkingCopies.Door(reads, writer, writing, failures, this::requireOpen);
    onWrite(written -> noteReached());
  }

  /** What people are at work on, beside the records. */
  public WorkingCopies workingCopies() {
    return new WorkingCopies(door, clock);
  }

  /** What people did, one entry after another, beside the records. */
  public Trail trail() {
    return new Trail(door, clock);
  }

  /** Opens the store of a home folder, making both when they are not there. */
  public static DocumentStore open(Path home, Clock clock) {
    return open(home, clock, Expected.ANYTHING);
  }

  /**
   * Opens the store of a home folder where it is what is expected there. A database that is gone,
   * empty, or ends before what was acknowledged is refused, and so is one of an older layout that
   * is damaged; nothing is changed then.
   *
   * @param clock tells when a version is written
   */
  public static DocumentStore open(Path home, Clock clock, Expected expected) {
    return open(StorePlace.of(home), clock, expected);
  }

  /** The same of an evidence base whose records may be on a server. */
  public static DocumentStore open(StorePlace place, Clock clock, Expected expected) {
    Objects.requireNonNull(clock, "clock");
    StoreFailures failures = place.failures();
    place.requireHome(expected);
    HomeLock lock = HomeLock.amongOthers(failures);
    return lock.whileOpening(
        failures,
        () -> {
          HomeOpening.Opened opened = place.opened(expected);
          return failures.inWords(() -> new DocumentStore(lock, opened, failures, clock));
        });
  }

  /** Sentences for people about what was found when the home was opened; mostly none. */
  public List<String> notices() {
    return opened.notices();
  }

  /**
   * Whether the database is a backup that was put in its place since the home was last open.
   * Whatever was derived from the records, such as an index, must be made anew then.
   */
  public boolean wasPutBack() {
    return opened.putBack();
  }

  /**
   * Adds a version for every write, or none at all.
   *
   * @param who who writes, not blank
   * @param why the reason, not blank
   */
  public WriteAnswer write(List<Write> writes, String who, String why) {
    return writeAll(List.copyOf(writes).iterator(), who, why);
  }

  /**
   * The same for any number of writes, held in memory one at a time. Other writers wait until it is
   * done. When the iterator throws, nothing has been written and its exception comes out.
   */
  public WriteAnswer writeAll(Iterator<Write> writes, String who, String why) {
    return writeAll(writes, who, why, Optional.empty());
  }

  /**
   * The same, but only if what the writes were decided upon has not changed since.
   *
   * @param basis what they were decided upon; empty when they are right whatever stands there
   * @return conflicting, with the documents that have changed, where some have
   */
  public WriteAnswer writeAll(
      Iterator<Write> writes, String who, String why, Optional<Basis> basis) {
    VersionWriter.Stamp stamp =
        new VersionWriter.Stamp(clock.instant().truncatedTo(ChronoUnit.MILLIS), who, why);
    return inTurn(() -> VersionWriter.writeAll(writer, writes, stamp, basis, failures));
  }

  /**
   * Puts the whole history of another store, gapless from change 1, into this one, or nothing.
   *
   * @return empty, and nothing was written, where this store is not empty
   */
  public Optional<WriteAnswer.Written> takeHistory(Iterator<DocumentVersion> versions) {
    return inTurn(() -> VersionWriter.OfHistory.writeAll(writer, versions, failures)).written();
  }

  private WriteAnswer inTurn(Supplier<WriteAnswer> write) {
    if (writing.isHeldByCurrentThread()) {
      throw new IllegalStateException("a write may not start within a write or its listener");
    }
    writing.lock();
    try {
      requireOpen();
      WriteAnswer answer = failures.inWords(write::get);
      answer.written().filter(done -> done.count() > 0).ifPresent(listeners::tell);
      return answer;
    } finally {
      writing.unlock();
    }
  }

  /** The document as it stands; empty when it was never written or is deleted. */
  public Optional<DocumentVersion> latest(String kind, String key) {
    return at(Long.MAX_VALUE, kind, key);
  }

  /**
   * The document as it stood after one change; empty when it was not yet written or was deleted.
   *
   * @param change number of the change, 0 for before the first
   */
  public Optional<DocumentVersion> at(long change, String kind, String key) {
    DocumentId id = new DocumentId(kind, key);
    return read(handle -> VersionReader.lastAt(handle, id, change))
        .filter(version -> !version.isDeletion());
  }

  /** The last version of a document up to a change, be it a deletion; empty when there is none. */
  public Optional<DocumentVersion> lastVersionAt(long change, String kind, String key) {
    DocumentId id = new DocumentId(kind, key);
    return read(handle -> VersionReader.lastAt(handle, id, change));
  }

  /** One version of a document, deletions included. */
  public Optional<DocumentVersion> version(String kind, String key, int version) {
    DocumentId id = new DocumentId(kind, key);
    return read(handle -> VersionReader.version(handle, id, version));
  }

  /** All versions of a document, the first one first, deletions included. */
  public List<DocumentVersion> history(String kind, String key) {
    DocumentId id = new DocumentId(kind, key);
    return read(handle -> VersionReader.history(handle, id));
  }

  /**
   * Passes on every document of a kind as it stands, by key, deleted ones left out, one at a time
   * in memory. All are of the moment of the call; the consumer may read and write the store
   * meanwhile.
   */
  public void forEachLatest(String kind, Consumer<DocumentVersion> consumer) {
    forEachAt(Long.MAX_VALUE, kind, consumer);
  }

  /** The same as the documents stood after one change. */
  public void forEachAt(long change, String kind, Consumer<DocumentVersion> consumer) {
    requireOpen();
    reads.run(handle -> VersionReader.forEachAt(handle, kind, change, consumer));
  }

  /**
   * Passes on every change after one, in order, deletions included, one at a time in memory.
   *
   * @param change 0 for all
   */
  public void changesAfter(long change, Consumer<DocumentVersion> consumer) {
    requireOpen();
    reads.run(handle -> VersionReader.changesAfter(handle, change, consumer));
  }

  /** Number of the last change, 0 when there is none. */
  public long lastChange() {
    return read(VersionReader::lastChange);
  }

  /** When a change was made; empty when there is none of this number. */
  public Optional<Instant> changedAt(long change) {
    return read(handle -> VersionReader.changedAt(handle, change));
  }

  /**
   * Has the listener told of all later writes, in the order of the change log, one at a time: when
   * they are durable and before the writer is told so. It may read the store, but not write to it.
   * The writes stand whatever it does: what it throws goes to the log, never to the writer.
   */
  public void onWrite(Consumer<WriteAnswer.Written> listener) {
    listeners.add(listener);
  }

  /** A look at every page and every record, not begun yet. */
  public SoundnessCheck soundnessCheck() {
    requireOpen();
    return new SoundnessCheck(opened.database(), failures);
  }

  /**
   * Does some work unless another process that shares the records is at it just now.
   *
   * @param work its name, the same in all processes
   * @return whether it was done here
   */
  public boolean doAlone(String work, Runnable task) {
    requireOpen();
    return opened.doAlone(homeLock, work, task, failures);
  }

  /** Waits for a write that is under way, then lets go of the home. May be called again. */
  @Override
  public void close() {
    if (writing.isHeldByCurrentThread()) {
      throw new IllegalStateException("the store may not be closed within a write");
    }
    writing.lock();
    try {
      if (closed) {
        return;
      }
      closed = true;
      reads.close();
      writer.close();
      opened.marker().close();
      homeLock.close();
    } catch (SQLException | IOException failure) {
      throw failures.worded(failure);
    } finally {
      writing.unlock();
    }
  }

  /** Notes beside the database how far it has come, so that what it may lose later is missed. */
  private void noteReached() {
    try {
      opened.marker().set(read(handle -> HomeMarker.Reached.last(handle)));
    } catch (IOException | RuntimeException unwritten) {
      // The records are safe, which the writer must hear, and a note behind them harms nothing.
      return;
    }
  }

  private <T> T read(Function<Handle, T> question) {
    requireOpen();
    return reads.ask(question);
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("the store is closed");
    }
  }
}
