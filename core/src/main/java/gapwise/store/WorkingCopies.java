package gapwise.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.locks.Lock;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/**
 * What people are at work on. A copy is overwritten each time it is kept, has no history and no
 * change number, and nothing that is derived from the records knows of it; but what was answered is
 * on the disk, as with records. Safe for any number of threads.
 */
public final class WorkingCopies {
  private static final String SELECT =
      "SELECT copy_key, version, written_at, written_by, content FROM working_copy";

  private final Door door;
  private final Clock clock;

  /**
   * The ways to the database that the store has, for what is kept beside the records.
   *
   * @param reads questions, which never wait
   * @param writer the one connection that writes
   * @param writing held while it does
   * @param failures words what goes wrong
   * @param open throws where the store is closed
   */
  record Door(
      StoreReads reads, StoreWriter writer, Lock writing, StoreFailures failures, Runnable open) {
    <T> T read(Function<Handle, T> question) {
      open.run();
      return reads.ask(question);
    }

    <T> T write(Function<Handle, T> change) {
      writing.lock();
      try {
        open.run();
        return failures.inWords(() -> writer.inTransaction(change));
      } finally {
        writing.unlock();
      }
    }
  }

  WorkingCopies(Door door, Clock clock) {
    this.door = door;
    this.clock = clock;
  }

  /** The copy of this name, if there is one. */
  public Optional<WorkingCopy> find(String kind, String key) {
    DocumentId id = new DocumentId(kind, key);
    return door.read(
        handle ->
            handle
                .createQuery(SELECT + " WHERE kind = :kind AND copy_key = :key")
                .bind("kind", id.kind())
                .bind("key", id.key())
                .map((row, context) -> copy(row))
                .findOne());
  }

  /** Whether there is a copy of a kind. */
  public boolean holds(String kind) {
    return door.read(
        handle ->
            handle
                .createQuery("SELECT 1 FROM working_copy WHERE kind = :kind LIMIT 1")
                .bind("kind", kind)
                .mapTo(Integer.class)
                .findOne()
                .isPresent());
  }

  /** Passes on all copies of a kind, the last kept first, one at a time in memory. */
  public void forEach(String kind, Consumer<WorkingCopy> consumer) {
    door.read(
        handle -> {
          handle
              .createQuery(SELECT + " WHERE kind = :kind ORDER BY written_at DESC, copy_key")
              .bind("kind", kind)
              .map((row, context) -> copy(row))
              .forEach(consumer);
          return true;
        });
  }

  /**
   * Keeps a copy.
   *
   * @param expectedVersion the version that the writer has seen, 0 to begin one
   * @return its version now; empty where another stands there, and nothing is changed then
   */
  public OptionalInt keep(String kind, String key, String json, String who, int expectedVersion) {
    DocumentId id = new DocumentId(kind, key);
    String when = clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
    int rows = door.write(handle -> keep(handle, id, json, who, when, expectedVersion));
    return rows == 1 ? OptionalInt.of(expectedVersion + 1) : OptionalInt.empty();
  }

  private static int keep(
      Handle handle, DocumentId id, String json, String who, String when, int expectedVersion) {
    String statement =
        expectedVersion == 0
            ? "INSERT INTO working_copy (kind, copy_key, version, written_at, written_by, content)"
                + " VALUES (:kind, :key, :next, :when, :who, :json)"
                + " ON CONFLICT (kind, copy_key) DO NOTHING"
            : "UPDATE working_copy SET version = :next, written_at = :when, written_by = :who,"
                + " content = :json WHERE kind = :kind AND copy_key = :key AND version = :seen";
    var update =
        handle
            .createUpdate(statement)
            .bind("kind", id.kind())
            .bind("key", id.key())
            .bind("next", expectedVersion + 1)
            .bind("when", when)
            .bind("who", who)
            .bind("json", json);
    return (expectedVersion == 0 ? update : update.bind("seen", expectedVersion)).execute();
  }

  /** Ends a copy; whether there was one. */
  public boolean drop(String kind, String key) {
    DocumentId id = new DocumentId(kind, key);
    return door.write(
            handle ->
                handle
                    .createUpdate("DELETE FROM working_copy WHERE kind = :kind AND copy_key = :key")
                    .bind("kind", id.kind())
                    .bind("key", id.key())
                    .execute())
        == 1;
  }

  private static WorkingCopy copy(ResultSet row) throws SQLException {
    return new WorkingCopy(
        row.getString(1),
        row.getInt(2),
        Instant.parse(row.getString(3)),
        row.getString(4),
        row.getString(5));
  }
}
