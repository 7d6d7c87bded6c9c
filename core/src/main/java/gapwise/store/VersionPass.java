package gapwise.store;

import gapwise.store.DamagedRecord.What;
import gapwise.store.database.Checksum;
import gapwise.store.database.ContentChecksumMigration;
import gapwise.store.database.Dialect;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Reads every version in the order of the change log and holds each against its checksum. Goes on
 * behind what cannot be read. Used once.
 */
final class VersionPass {
  /** More are not listed: a number that was damaged itself could make them billions. */
  private static final int MOST_DAMAGED = 1000;

  private final Connection connection;
  private final long digestUpTo;
  private final BooleanSupplier stopped;
  private final String query;
  private final MessageDigest digest = Checksum.sha256();
  private final List<DamagedRecord> damaged = new ArrayList<>();
  private long versions;
  private long last;
  private Optional<Instant> lastAt = Optional.empty();
  private long withoutChecksum;

  /**
   * @param digestUpTo last change that counts for the digest
   */
  VersionPass(Connection connection, boolean checksums, long digestUpTo, BooleanSupplier stopped) {
    this.connection = connection;
    this.digestUpTo = digestUpTo;
    this.stopped = stopped;
    this.query =
        "SELECT change_number, kind, document_key, version, written_at, written_by, reason, content, "
            + (checksums ? ContentChecksumMigration.COLUMN : "NULL")
            + " FROM document_version WHERE change_number > ? ORDER BY change_number";
  }

  /**
   * Passes over all there is.
   *
   * @param expected the last change that must be there; what is missing up to it is told
   */
  void run(long expected) throws SQLException {
    while (!passedOverAll(expected) && damaged.size() < MOST_DAMAGED) {
      missing(last + 1, last + 1, What.UNREADABLE);
    }
    missing(last + 1, expected, What.MISSING);
  }

  /** False when the next version cannot be read and some that should be there come after it. */
  private boolean passedOverAll(long expected) throws SQLException {
    try (PreparedStatement rows = connection.prepareStatement(query)) {
      rows.setLong(1, last);
      try (ResultSet row = rows.executeQuery()) {
        while (!stopped.getAsBoolean() && row.next()) {
          missing(last + 1, row.getLong(1) - 1, What.MISSING);
          take(row);
        }
        return true;
      }
    } catch (SQLException failure) {
      if (!Dialect.isDamage(failure)) {
        throw failure;
      }
      Dialect.of(connection).goOn(connection);
      return last >= expected;
    }
  }

  private void missing(long from, long to, What what) {
    for (long change = from; change <= to && damaged.size() < MOST_DAMAGED; change++) {
      damaged.add(new DamagedRecord(change, "a record", what));
    }
    last = Math.max(last, to);
  }

  private void take(ResultSet row) throws SQLException {
    last = row.getLong(1);
    versions++;
    byte[] content = row.getBytes(8);
    String checksum = row.getString(9);
    String found = content == null ? null : Checksum.of(content);
    Optional<Instant> when = VersionReader.instant(row.getString(5));
    if (checksum == null && found != null) {
      withoutChecksum++;
    }
    boolean changed = checksum != null && !checksum.equals(found);
    if (changed || when.isEmpty()) {
      damaged.add(new DamagedRecord(last, name(row), What.CHANGED));
    }
    lastAt = when;
    if (last <= digestUpTo) {
      for (int column = 1; column <= 7; column++) {
        add(String.valueOf(row.getString(column)));
      }
      add(String.valueOf(found));
    }
  }

  /** With its length before it, so that no two rows give the same bytes. */
  private void add(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(0, bytes.length));
    digest.update(bytes);
  }

  private static String name(ResultSet row) throws SQLException {
    return row.getString(2) + " " + row.getString(3) + ", version " + row.getString(4);
  }

  List<DamagedRecord> damaged() {
    return List.copyOf(damaged);
  }

  long versions() {
    return versions;
  }

  long last() {
    return last;
  }

  Optional<Instant> lastAt() {
    return lastAt;
  }

  long withoutChecksum() {
    return withoutChecksum;
  }

  /** SHA-256 over what was read; equal for equal histories. May be asked once. */
  String digest() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
