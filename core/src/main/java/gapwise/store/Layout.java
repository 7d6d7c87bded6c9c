package gapwise.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;

/**
 * What a database file says of its own layout, read without changing it.
 *
 * @param tables whether it has any table but the list of what was applied to it
 * @param versions whether it has the table of versions
 * @param checksums whether that has a checksum beside each content
 * @param migrations what was applied to it, each as number and description, the first one first
 */
record Layout(boolean tables, boolean versions, boolean checksums, List<String> migrations) {
  /** What this program applies to a new file. */
  static final List<String> KNOWN =
      List.of(
          "1 documents",
          "2 append only",
          "3 content checksum",
          "4 working copies",
          "5 trail",
          "6 trail append only");

  Layout {
    migrations = List.copyOf(migrations);
  }

  static Layout of(Connection connection) throws SQLException {
    boolean history = has(connection, "name = 'flyway_schema_history'");
    return new Layout(
        has(connection, "name <> 'flyway_schema_history'"),
        has(connection, "name = 'document_version'"),
        hasChecksums(connection),
        history
            ? DatabaseFile.texts(
                connection,
                "SELECT version || ' ' || description FROM flyway_schema_history"
                    + " WHERE version IS NOT NULL ORDER BY installed_rank")
            : List.of());
  }

  static boolean hasChecksums(Connection connection) throws SQLException {
    return answers(
        connection,
        "SELECT 1 FROM pragma_table_info('document_version') WHERE name = '"
            + ContentChecksumMigration.COLUMN
            + "'");
  }

  /** The last migration that this program does not know; then a newer one has used the file. */
  Optional<String> newer() {
    return migrations.stream()
        .filter(migration -> !KNOWN.contains(migration))
        .reduce((first, second) -> second);
  }

  /** Whether the file belongs to some other program. */
  boolean isForeign() {
    return tables && migrations.isEmpty();
  }

  /** Whether opening it would change its layout. */
  boolean isOlder() {
    return versions && !isUpToDate();
  }

  /** Whether this program has nothing to change in its layout. */
  boolean isUpToDate() {
    return versions && migrations.containsAll(KNOWN);
  }

  private static boolean has(Connection connection, String which) throws SQLException {
    return answers(connection, "SELECT 1 FROM sqlite_master WHERE type = 'table' AND " + which);
  }

  private static boolean answers(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      return rows.next();
    }
  }
}
