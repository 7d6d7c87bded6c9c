package gapwise.store.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.postgresql.PGConnection;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;

/** What one asks of an open connection in each database's own words. */
public enum Dialect {
  SQLITE,
  POSTGRESQL;

  private static final int MOST_FINDINGS = 20;

  /** Extended result codes hold the primary one in their lowest byte (sqlite.org/rescode.html). */
  private static final int PRIMARY = 0xFF;

  /** The language of a connection. */
  public static Dialect of(Connection connection) throws SQLException {
    return connection.isWrapperFor(PGConnection.class) ? POSTGRESQL : SQLITE;
  }

  /** The kind of failure that a result code of SQLite stands for. */
  public static SQLiteErrorCode primary(int code) {
    return SQLiteErrorCode.getErrorCode(code & PRIMARY);
  }

  /** Whether the database found its files damaged. */
  public static boolean isDamage(SQLException failure) {
    SQLiteErrorCode primary = primary(failure.getErrorCode());
    return primary == SQLiteErrorCode.SQLITE_CORRUPT
        || primary == SQLiteErrorCode.SQLITE_NOTADB
        || PostgresWords.isDamage(failure);
  }

  /** The names of all tables. */
  List<String> tables(Connection connection) throws SQLException {
    return DatabaseFile.texts(
        connection,
        this == SQLITE
            ? "SELECT name FROM sqlite_master WHERE type = 'table'"
            : "SELECT tablename FROM pg_tables WHERE schemaname = current_schema()");
  }

  /** The names of the columns of a table; none where there is no such table. */
  List<String> columns(Connection connection, String table) throws SQLException {
    return DatabaseFile.texts(
        connection,
        this == SQLITE
            ? "SELECT name FROM pragma_table_info('" + table + "') ORDER BY cid"
            : "SELECT attname FROM pg_attribute WHERE attrelid = to_regclass('"
                + table
                + "') AND attnum > 0 AND NOT attisdropped ORDER BY attnum");
  }

  /**
   * What is wrong with the database as such, in its own words; none when nothing is. A server looks
   * after its own files, and tells of damage when it is met.
   */
  public List<String> structure(Connection connection) throws SQLException {
    return this == POSTGRESQL
        ? List.of()
        : DatabaseFile.texts(connection, "PRAGMA integrity_check(" + MOST_FINDINGS + ")").stream()
            .flatMap(String::lines)
            .filter(line -> !line.equals("ok") && !line.startsWith("***"))
            .toList();
  }

  /** Makes a connection usable again on which a question failed. */
  public void goOn(Connection connection) throws SQLException {
    if (this == POSTGRESQL && !connection.getAutoCommit()) {
      connection.rollback();
    }
  }

  /** Stops what another thread is asking on a connection. */
  public void stop(Connection connection) throws SQLException {
    if (this == SQLITE) {
      connection.unwrap(SQLiteConnection.class).getDatabase().interrupt();
    } else {
      connection.unwrap(PGConnection.class).cancelQuery();
    }
  }
}
