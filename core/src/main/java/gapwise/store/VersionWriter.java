package gapwise.store;

import gapwise.store.database.Checksum;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.jdbi.v3.core.Handle;

/**
 * Adds versions within one open transaction. Two statements prepared once serve any number of
 * writes, which makes large imports several times faster than preparing them anew.
 */
final class VersionWriter implements AutoCloseable {
  /** After so many conflicts nothing more is looked at, for nothing will be written anyway. */
  static final int MOST_CONFLICTS = 100;

  private static final String LAST_VERSION =
      "SELECT version, content IS NULL FROM document_version"
          + " WHERE kind = ? AND document_key = ? ORDER BY version DESC LIMIT 1";
  private static final String INSERT =
      "INSERT INTO document_version (change_number, kind, document_key, version, written_at,"
          + " written_by, reason, content, content_sha256) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";

  private final PreparedStatement lastVersion;
  private final PreparedStatement insert;
  private final Stamp stamp;
  private final List<Conflict> conflicts = new ArrayList<>();
  private long lastChange;
  private long count;

  /** Who, when and why: the same for all writes of one transaction. */
  record Stamp(Instant when, String who, String why) {
    Stamp {
      Objects.requireNonNull(when, "when");
      requireWords("who", who);
      requireWords("why", why);
    }

    private static void requireWords(String name, String text) {
      Objects.requireNonNull(text, name);
      if (text.isBlank()) {
        throw new IllegalArgumentException(name + " must not be blank");
      }
    }
  }

  private record Last(int version, boolean deleted) {}

  VersionWriter(Connection connection, long lastChange, Stamp stamp) throws SQLException {
    this.lastVersion = connection.prepareStatement(LAST_VERSION);
    this.insert = connection.prepareStatement(INSERT);
    this.lastChange = lastChange;
    this.stamp = stamp;
  }

  /**
   * Adds a version for every write in a transaction of its own, or none at all.
   *
   * @param writer the connection that writes
   * @param basis what the writes were decided upon, if anything
   */
  static WriteAnswer writeAll(
      StoreWriter writer,
      Iterator<Write> writes,
      Stamp stamp,
      Optional<Basis> basis,
      StoreFailures failures) {
    return writer.inTransaction(
        handle -> {
          // Looked at within the transaction, which keeps all other writers out from its start.
          List<Conflict> changed =
              basis.map(seen -> VersionReader.changedSince(handle, seen)).orElse(List.of());
          if (!changed.isEmpty()) {
            return new WriteAnswer.Conflicting(changed);
          }
          long last = VersionReader.lastChange(handle);
          try (VersionWriter versions = new VersionWriter(handle.getConnection(), last, stamp)) {
            while (versions.takesMore() && writes.hasNext()) {
              versions.add(writes.next());
            }
            WriteAnswer answer = versions.answer();
            if (answer.written().isEmpty()) {
              handle.rollback();
            }
            return answer;
          } catch (SQLException failure) {
            throw failures.worded(failure);
          }
        });
  }

  /** Adds one version, or notes why it cannot be; after a conflict nothing more is added. */
  void add(Write write) throws SQLException {
    Last last = last(write.id());
    boolean follows =
        write.expectedVersion().isEmpty() || write.expectedVersion().getAsInt() == last.version();
    boolean somethingToDelete = write.json().isPresent() || !last.deleted();
    if (!follows || !somethingToDelete) {
      conflicts.add(
          new Conflict(
              write.id(),
              write.expectedVersion(),
              last.version(),
              last.deleted() && last.version() > 0));
    } else if (conflicts.isEmpty()) {
      insert(write, last.version() + 1);
    }
  }

  boolean takesMore() {
    return conflicts.size() < MOST_CONFLICTS;
  }

  WriteAnswer answer() {
    return conflicts.isEmpty()
        ? new WriteAnswer.Written(lastChange, count)
        : new WriteAnswer.Conflicting(conflicts);
  }

  private Last last(DocumentId id) throws SQLException {
    lastVersion.setString(1, id.kind());
    lastVersion.setString(2, id.key());
    try (ResultSet found = lastVersion.executeQuery()) {
      return found.next() ? new Last(found.getInt(1), found.getBoolean(2)) : new Last(0, true);
    }
  }

  private void insert(Write write, int version) throws SQLException {
    insert.setLong(1, lastChange + 1);
    insert.setString(2, write.id().kind());
    insert.setString(3, write.id().key());
    insert.setInt(4, version);
    insert.setString(5, stamp.when().toString());
    insert.setString(6, stamp.who());
    insert.setString(7, stamp.why());
    insert.setString(8, write.json().orElse(null));
    insert.setString(9, write.json().map(VersionWriter::checksum).orElse(null));
    insert.executeUpdate();
    lastChange++;
    count++;
  }

  private static String checksum(String json) {
    return Checksum.of(json.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void close() throws SQLException {
    lastVersion.close();
    insert.close();
  }

  /**
   * Puts versions into an empty store under the numbers, names and times that they had in another.
   */
  static final class OfHistory implements AutoCloseable {
    private static final String LAST_NUMBER =
        "SELECT COALESCE(MAX(version), 0) FROM document_version WHERE kind = ? AND document_key = ?";

    private final PreparedStatement lastVersion;
    private final PreparedStatement insert;
    private long last;

    private OfHistory(Connection connection) throws SQLException {
      this.lastVersion = connection.prepareStatement(LAST_NUMBER);
      this.insert = connection.prepareStatement(INSERT);
    }

    /**
     * Writes all in one transaction, or none: conflicting with the first where something is there.
     */
    static WriteAnswer writeAll(
        StoreWriter writer, Iterator<DocumentVersion> versions, StoreFailures failures) {
      return writer.inTransaction(
          handle -> {
            // Asked within the transaction, which keeps all other writers out from its start.
            Optional<Conflict> there = first(handle);
            if (there.isPresent()) {
              return new WriteAnswer.Conflicting(List.of(there.get()));
            }
            try (OfHistory history = new OfHistory(handle.getConnection())) {
              while (versions.hasNext()) {
                history.add(versions.next());
              }
              return new WriteAnswer.Written(history.last, history.last);
            } catch (SQLException failure) {
              throw failures.worded(failure);
            }
          });
    }

    private static Optional<Conflict> first(Handle handle) {
      return handle
          .createQuery(
              "SELECT kind, document_key, version, content IS NULL FROM document_version"
                  + " ORDER BY change_number LIMIT 1")
          .map(
              (row, context) ->
                  new Conflict(
                      new DocumentId(row.getString(1), row.getString(2)),
                      OptionalInt.empty(),
                      row.getInt(3),
                      row.getBoolean(4)))
          .findOne();
    }

    private void add(DocumentVersion version) throws SQLException {
      int before = versionsOf(version.id());
      if (version.change() != last + 1 || version.version() != before + 1) {
        throw new IllegalArgumentException(
            version.id()
                + ": change "
                + version.change()
                + " and version "
                + version.version()
                + " do not follow change "
                + last
                + " and version "
                + before);
      }
      Optional<String> json = version.json();
      insert.setLong(1, version.change());
      insert.setString(2, version.id().kind());
      insert.setString(3, version.id().key());
      insert.setInt(4, version.version());
      insert.setString(5, version.when().toString());
      insert.setString(6, version.who());
      insert.setString(7, version.why());
      insert.setString(8, json.orElse(null));
      insert.setString(
          9, json.map(text -> Checksum.of(text.getBytes(StandardCharsets.UTF_8))).orElse(null));
      insert.executeUpdate();
      last = version.change();
    }

    private int versionsOf(DocumentId id) throws SQLException {
      lastVersion.setString(1, id.kind());
      lastVersion.setString(2, id.key());
      try (ResultSet found = lastVersion.executeQuery()) {
        return found.next() ? found.getInt(1) : 0;
      }
    }

    @Override
    public void close() throws SQLException {
      lastVersion.close();
      insert.close();
    }
  }
}
