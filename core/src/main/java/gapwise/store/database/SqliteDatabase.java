package gapwise.store.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.Function;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Handle;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** The embedded database: one file in the home, shared by processes of one machine. */
public final class SqliteDatabase implements Database {
  /**
   * How long a write waits for that of another process. The longest of our own is an import of many
   * studies: one of 5,000 took 22 seconds from the start of the command to its end, reading and
   * checking with it, on a machine with much other work.
   */
  private static final int MOST_MILLISECONDS_OF_WAITING = 60_000;

  private static final String[] MIGRATIONS = {
    "classpath:gapwise/store/migration/sqlite", "classpath:gapwise/store/migration/any"
  };

  private final Path file;
  private final SQLiteDataSource source;

  /** The database of a home. */
  public static SqliteDatabase ofHome(Path home) {
    return new SqliteDatabase(home.resolve(FILE));
  }

  /**
   * A database by its file.
   *
   * @param file made by the first connection where it is not there
   */
  public SqliteDatabase(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    // Readers see the last commit while a writer works.
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    // A commit returns when it is on the disk, not when it is on its way there.
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    // A transaction that reads and then writes must hold the write lock from its start.
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(MOST_MILLISECONDS_OF_WAITING);
    this.file = file;
    source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
  }

  @Override
  public Connection connect() throws SQLException {
    return source.getConnection();
  }

  @Override
  public Connection connectToRead() throws SQLException {
    return connect();
  }

  @Override
  public Connection connectToLook() throws SQLException {
    return DatabaseFile.connect(file);
  }

  @Override
  public boolean isUsable(Connection kept) {
    return true;
  }

  /** As many as ask: no question waits for another, and a connection is a few kilobytes. */
  @Override
  public int mostReadsAtOnce() {
    return Integer.MAX_VALUE;
  }

  /** One statement is of one moment by itself; a transaction here would keep writers out. */
  @Override
  public <T> T ask(Handle handle, Function<Handle, T> question) {
    return question.apply(handle);
  }

  /** Nothing to do: a transaction has the file's own lock from its start. */
  @Override
  public void takeTurn(Handle writer) {}

  @Override
  public int migrate() {
    return Flyway.configure()
        .dataSource((DataSource) source)
        .locations(MIGRATIONS)
        .javaMigrations(new ContentChecksumMigration())
        .load()
        .migrate()
        .migrationsExecuted;
  }

  @Override
  public long bytes() throws IOException {
    return Files.size(file);
  }
}
