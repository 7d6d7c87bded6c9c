package gapwise.store.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a database says of its own layout, read without changing it.
 *
 * @param tables whether it has any table but the list of what was applied to it
 * @param versions whether it has the table of versions
 * @param checksums whether that has a checksum beside each content
 * @param migrations what was applied to it, each as number and description, the first one first
 */
public record Layout(boolean tables, boolean versions, boolean checksums, List<String> migrations) {
  /** What this program applies to a new file, in order. */
  public static final List<String> KNOWN =
      List.of(
          "1 documents",
          "2 append only",
          "3 content checksum",
          "4 working copies",
          "5 trail",
          "6 trail append only");

  public Layout {
    migrations = List.copyOf(migrations);
  }

  /** The first so many of them are one script on a server, which has no older layouts. */
  private static final int FIRST_OF_FILE = 4;

  private static final String FIRST_OF_SERVER = "4 records and working copies";

  private static final String APPLIED = "flyway_schema_history";

  /** Tells a base on a server from others; a file needs none. */
  static final String IDENTITY = "base_identity";

  /** Reads it. */
  public static Layout of(Connection connection) throws SQLException {
    List<String> tables = Dialect.of(connection).tables(connection);
    return new Layout(
        tables.stream().anyMatch(table -> !table.equals(APPLIED)),
        tables.contains("document_version"),
        hasChecksums(connection),
        tables.contains(APPLIED)
            ? DatabaseFile.texts(
                connection,
                "SELECT version || ' ' || description FROM "
                    + APPLIED
                    + " WHERE version IS NOT NULL ORDER BY installed_rank")
            : List.of());
  }

  /** Whether a database has a checksum beside each content. */
  public static boolean hasChecksums(Connection connection) throws SQLException {
    return Dialect.of(connection)
        .columns(connection, "document_version")
        .contains(ContentChecksumMigration.COLUMN);
  }

  /** The tables that hold what people entered, the versions of documents first. */
  static List<String> tablesOfRecords(Connection connection) throws SQLException {
    return Dialect.of(connection).tables(connection).stream()
        .filter(table -> !table.equals(APPLIED) && !table.equals(IDENTITY))
        .filter(table -> !table.startsWith("sqlite_"))
        .sorted()
        .sorted(Comparator.comparing(table -> !table.equals("document_version")))
        .toList();
  }

  private List<String> known() {
    return migrations.contains(FIRST_OF_SERVER)
        ? Stream.concat(
                Stream.of(FIRST_OF_SERVER), KNOWN.subList(FIRST_OF_FILE, KNOWN.size()).stream())
            .toList()
        : KNOWN;
  }

  /** The last migration that this program does not know; then a newer one has used the file. */
  public Optional<String> newer() {
    return migrations.stream()
        .filter(migration -> !known().contains(migration))
        .reduce((first, second) -> second);
  }

  /** Whether the file belongs to some other program. */
  public boolean isForeign() {
    return tables && migrations.isEmpty();
  }

  /** Whether opening it would change its layout. */
  public boolean isOlder() {
    return versions && !isUpToDate();
  }

  /** Whether this program has nothing to change in its layout. */
  public boolean isUpToDate() {
    return versions && migrations.containsAll(known());
  }
}
