package gapwise.store.database;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteOpenMode;

/**
 * A database file opened for looking at it, and no more: neither made nor brought to another
 * layout. Others may read and write it meanwhile, in this process or another.
 */
public final class DatabaseFile {
  /** Stands in the file's own field for programs (user_version) while it is a backup. */
  private static final long BACKUP = 1;

  private static final int MOST_MILLISECONDS_OF_WAITING = 10_000;

  private DatabaseFile() {}

  /** Opens a file that is there. */
  public static Connection connect(Path file) throws SQLException {
    try {
      return proven(file.toString());
    } catch (SQLException failure) {
      // Beside a file on a disk that cannot be written there is no place for SQLite's own two
      // files. Where no log waits there either, nobody writes, and the file can be read alone.
      boolean noPlace =
          Dialect.primary(failure.getErrorCode()) == SQLiteErrorCode.SQLITE_CANTOPEN
              && !Files.isWritable(file.toAbsolutePath().getParent())
              && !Files.exists(log(file));
      if (!noPlace) {
        throw failure;
      }
      return proven(file.toUri() + "?immutable=1");
    }
  }

  /** SQLite's log of what was committed and not yet put into the file. */
  public static Path log(Path file) {
    return file.resolveSibling(file.getFileName() + "-wal");
  }

  /** SQLite's index of that log, made anew whenever it is missing. */
  public static Path logIndex(Path file) {
    return file.resolveSibling(file.getFileName() + "-shm");
  }

  /** A connection that has read something, for an unreadable file is found out only then. */
  private static Connection proven(String name) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.setBusyTimeout(MOST_MILLISECONDS_OF_WAITING);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + name);
    Connection connection = source.getConnection();
    try {
      number(connection, "PRAGMA schema_version");
      return connection;
    } catch (SQLException failure) {
      connection.close();
      throw failure;
    }
  }

  /** Whether the file is a backup that was not opened as a home's own since. */
  public static boolean isBackup(Connection connection) throws SQLException {
    return number(connection, "PRAGMA user_version") == BACKUP;
  }

  /** Says so of the file, or takes it back. */
  public static void setBackup(Connection connection, boolean backup) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA user_version = " + (backup ? BACKUP : 0));
    }
  }

  /** The number that a query gives; 0 where it gives no row. */
  public static long number(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.next() ? row.getLong(1) : 0;
    }
  }

  /** The texts of the first column of a query. */
  public static List<String> texts(Connection connection, String query) throws SQLException {
    List<String> texts = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        texts.add(rows.getString(1));
      }
    }
    return texts;
  }
}
