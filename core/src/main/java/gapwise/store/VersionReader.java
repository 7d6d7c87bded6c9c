package gapwise.store;

import gapwise.store.database.Checksum;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;

/** The questions that are asked of the versions, each one statement. */
final class VersionReader {
  private static final String SELECT =
      "SELECT kind, document_key, version, change_number, written_at, written_by, reason, content,"
          + " content_sha256"
          + " FROM document_version AS this WHERE ";
  private static final String OF_DOCUMENT = "kind = :kind AND document_key = :key";

  /**
   * Versions count without a gap, so one look for the next tells whether a version was the last one
   * at a change.
   */
  private static final String WAS_LATEST =
      "this.change_number <= :change AND"
          + " NOT EXISTS (SELECT 1 FROM document_version AS next WHERE next.kind = this.kind"
          + " AND next.document_key = this.document_key AND next.version = this.version + 1"
          + " AND next.change_number <= :change)";

  private VersionReader() {}

  static Optional<DocumentVersion> lastAt(Handle handle, DocumentId id, long change) {
    return handle
        .createQuery(
            SELECT + OF_DOCUMENT + " AND change_number <= :change ORDER BY version DESC LIMIT 1")
        .bind("kind", id.kind())
        .bind("key", id.key())
        .bind("change", change)
        .map((row, context) -> version(row))
        .findOne();
  }

  static Optional<DocumentVersion> version(Handle handle, DocumentId id, int version) {
    return handle
        .createQuery(SELECT + OF_DOCUMENT + " AND version = :version")
        .bind("kind", id.kind())
        .bind("key", id.key())
        .bind("version", version)
        .map((row, context) -> version(row))
        .findOne();
  }

  static List<DocumentVersion> history(Handle handle, DocumentId id) {
    return handle
        .createQuery(SELECT + OF_DOCUMENT + " ORDER BY version")
        .bind("kind", id.kind())
        .bind("key", id.key())
        .map((row, context) -> version(row))
        .list();
  }

  static void forEachAt(
      Handle handle, String kind, long change, Consumer<DocumentVersion> consumer) {
    handle
        .createQuery(
            SELECT
                + "kind = :kind AND content IS NOT NULL AND "
                + WAS_LATEST
                + " ORDER BY document_key")
        .bind("kind", kind)
        .bind("change", change)
        .map((row, context) -> version(row))
        .forEach(consumer);
  }

  static void changesAfter(Handle handle, long change, Consumer<DocumentVersion> consumer) {
    handle
        .createQuery(SELECT + "change_number > :change ORDER BY change_number")
        .bind("change", change)
        .map((row, context) -> version(row))
        .forEach(consumer);
  }

  /** What of a basis has changed since, at most as many as conflicts are told. */
  static List<Conflict> changedSince(Handle handle, Basis basis) {
    return handle
        .createQuery(
            "SELECT document_key, version, content IS NULL FROM document_version"
                + " WHERE change_number > :change AND kind = :kind"
                + " ORDER BY change_number LIMIT :most")
        .bind("change", basis.change())
        .bind("kind", basis.kind())
        .bind("most", VersionWriter.MOST_CONFLICTS)
        .map(
            (row, context) ->
                new Conflict(
                    new DocumentId(basis.kind(), row.getString(1)),
                    OptionalInt.empty(),
                    row.getInt(2),
                    row.getBoolean(3)))
        .list();
  }

  static long lastChange(Handle handle) {
    return handle
        .createQuery("SELECT COALESCE(MAX(change_number), 0) FROM document_version")
        .mapTo(Long.class)
        .one();
  }

  static Optional<Instant> changedAt(Handle handle, long change) {
    return handle
        .createQuery("SELECT written_at FROM document_version WHERE change_number = :change")
        .bind("change", change)
        .mapTo(String.class)
        .findOne()
        .flatMap(VersionReader::instant);
  }

  private static DocumentVersion version(ResultSet row) throws SQLException {
    byte[] content = row.getBytes(8);
    String checksum = row.getString(9);
    Optional<Instant> when = instant(row.getString(5));
    boolean changed =
        checksum != null && (content == null || !checksum.equals(Checksum.of(content)));
    return new DocumentVersion(
        new DocumentId(row.getString(1), row.getString(2)),
        row.getInt(3),
        row.getLong(4),
        when.orElse(Instant.EPOCH),
        row.getString(6),
        row.getString(7),
        Optional.ofNullable(content).map(bytes -> new String(bytes, StandardCharsets.UTF_8)),
        changed || when.isEmpty());
  }

  /** Empty where what stands there is no time, as damage leaves it. */
  static Optional<Instant> instant(String text) {
    try {
      return Optional.of(Instant.parse(String.valueOf(text)));
    } catch (DateTimeParseException damaged) {
      return Optional.empty();
    }
  }
}
