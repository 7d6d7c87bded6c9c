package gapwise.store.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.Context;
import org.flywaydb.core.api.migration.JavaMigration;

/**
 * The third layout: a checksum beside each content, worked out for those that are there. Code
 * instead of a script, since the database cannot work out the checksum itself.
 */
public final class ContentChecksumMigration implements JavaMigration {
  /** The column that it adds. */
  public static final String COLUMN = "content_sha256";

  /** Contents held in memory at a time. */
  private static final int ROWS_AT_A_TIME = 200;

  private static final String HISTORY_MAY_BE_CHANGED =
      "DROP TRIGGER IF EXISTS document_version_is_never_changed";

  /** Word for word as in the second migration. */
  private static final String HISTORY_IS_NEVER_CHANGED =
      """
      CREATE TRIGGER document_version_is_never_changed
      BEFORE UPDATE ON document_version
      BEGIN
        SELECT RAISE(ABORT, 'a version of a document is never changed');
      END""";

  private static final String WITHOUT_CHECKSUM =
      "SELECT change_number, content FROM document_version WHERE change_number > ?"
          + " AND content IS NOT NULL AND content_sha256 IS NULL ORDER BY change_number LIMIT "
          + ROWS_AT_A_TIME;

  @Override
  public MigrationVersion getVersion() {
    return MigrationVersion.fromVersion("3");
  }

  @Override
  public String getDescription() {
    return "content checksum";
  }

  @Override
  @SuppressWarnings("NullAway") // How Flyway is told that a migration in code has no checksum.
  public Integer getChecksum() {
    return null;
  }

  @Override
  public boolean canExecuteInTransaction() {
    return true;
  }

  @Override
  public void migrate(Context context) throws SQLException {
    Connection connection = context.getConnection();
    try (Statement statement = connection.createStatement()) {
      // A file put together by hand from the tables of a newer one may have the column already.
      if (!Layout.hasChecksums(connection)) {
        statement.execute("ALTER TABLE document_version ADD COLUMN " + COLUMN + " TEXT");
      }
      statement.execute(HISTORY_MAY_BE_CHANGED);
      long reached = 0;
      for (long next = addAfter(connection, reached); next > reached; ) {
        reached = next;
        next = addAfter(connection, reached);
      }
      statement.execute(HISTORY_IS_NEVER_CHANGED);
    }
  }

  /** Adds some checksums after a change; the last change that has one now, or the same one. */
  private static long addAfter(Connection connection, long change) throws SQLException {
    long last = change;
    try (PreparedStatement read = connection.prepareStatement(WITHOUT_CHECKSUM);
        PreparedStatement add =
            connection.prepareStatement(
                "UPDATE document_version SET content_sha256 = ? WHERE change_number = ?")) {
      read.setLong(1, change);
      try (ResultSet rows = read.executeQuery()) {
        while (rows.next()) {
          last = rows.getLong(1);
          add.setString(1, Checksum.of(rows.getBytes(2)));
          add.setLong(2, last);
          add.addBatch();
        }
      }
      add.executeBatch();
    }
    return last;
  }
}
