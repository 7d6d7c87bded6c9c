package gapwise.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** The database file: how it is opened, and the layout it must have. */
final class Database {
  /** The file within the home. */
  static final String FILE = "gapwise.db";

  /**
   * How long a write waits for that of another process. The longest of our own is an import of many
   * studies: one of 5,000 took 22 seconds from the start of the command to its end, reading and
   * checking with it, on a machine with much other work.
   */
  private static final int MOST_MILLISECONDS_OF_WAITING = 60_000;

  private static final String MIGRATIONS = "classpath:gapwise/store/migration";

  private final SQLiteDataSource source;

  Database(Path home) {
    SQLiteConfig config = new SQLiteConfig();
    // Readers see the last commit while a writer works.
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    // A commit returns when it is on the disk, not when it is on its way there.
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    // A transaction that reads and then writes must hold the write lock from its start.
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(MOST_MILLISECONDS_OF_WAITING);
    source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + home.resolve(FILE));
  }

  Connection connect() throws SQLException {
    return source.getConnection();
  }

  /**
   * Brings the layout up to this program's; whoever calls has made sure that it is no newer one.
   *
   * @return how many migrations were applied
   */
  int migrate() {
    return Flyway.configure()
        .dataSource((DataSource) source)
        .locations(MIGRATIONS)
        .javaMigrations(new ContentChecksumMigration())
        .load()
        .migrate()
        .migrationsExecuted;
  }
}
