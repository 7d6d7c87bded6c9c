package gapwise.store;

import gapwise.store.database.Checksum;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jdbi.v3.core.Handle;

/**
 * Puts versions into an empty store under the numbers, names and times that they had in another.
 */
final class HistoryWriter implements AutoCloseable {
  private static final String LAST_VERSION =
      "SELECT COALESCE(MAX(version), 0) FROM document_version WHERE kind = ? AND document_key = ?";
  private static final String INSERT =
      "INSERT INTO document_version (change_number, kind, document_key, version, written_at,"
          + " written_by, reason, content, content_sha256) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";

  private final PreparedStatement lastVersion;
  private final PreparedStatement insert;
  private long last;

  private HistoryWriter(Connection connection) throws SQLException {
    this.lastVersion = connection.prepareStatement(LAST_VERSION);
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
          try (HistoryWriter history = new HistoryWriter(handle.getConnection())) {
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
