package gapwise.store.database;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.function.Function;
import java.util.zip.CRC32;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Handle;
import org.postgresql.ds.PGSimpleDataSource;

/** A database of a PostgreSQL server, which processes of any number of machines share. */
public final class PostgresDatabase implements Database {
  private static final String[] MIGRATIONS = {
    "classpath:gapwise/store/migration/postgresql", "classpath:gapwise/store/migration/any"
  };

  /** Name of the locks of this program among those that others may take in the same database. */
  private static final int OUR_LOCKS = 0x676170;

  private static final int WRITING = 0;

  private static final int SECONDS_TO_CONNECT = 10;

  /** Longer than any one statement takes, the wait for another's write of a minute with it. */
  private static final int SECONDS_OF_SILENCE = 180;

  private static final int SECONDS_TO_ANSWER = 5;

  /** Rows that a question holds at a time; a study is some kilobytes. */
  private static final int ROWS_AT_A_TIME = 100;

  /**
   * A server takes 100 connections unless told otherwise, so three processes have room. Pages read
   * the index and ask the database briefly.
   */
  private static final int MOST_READS_AT_ONCE = 24;

  /**
   * A write that another process keeps from its turn waits for a minute, as with the file. A commit
   * is told when it is on the server's disk. A process whose machine is gone is given up after two
   * minutes, and its turn with it.
   */
  private static final String SETTINGS =
      "SET lock_timeout = '60s'; SET tcp_keepalives_idle = 60; SET tcp_keepalives_interval = 15;"
          + " SET tcp_keepalives_count = 4; SELECT set_config('synchronous_commit', 'on', false)"
          + " WHERE current_setting('synchronous_commit') = 'off'";

  private final PGSimpleDataSource source = new PGSimpleDataSource();

  public PostgresDatabase(DatabaseAddress address) {
    source.setApplicationName("gapwise");
    source.setConnectTimeout(SECONDS_TO_CONNECT);
    source.setSocketTimeout(SECONDS_OF_SILENCE);
    source.setTcpKeepAlive(true);
    source.setDefaultRowFetchSize(ROWS_AT_A_TIME);
    source.setUrl(address.url());
    address.password().ifPresent(source::setPassword);
    // A server's detail of a failure may quote what was written.
    source.setLogServerErrorDetail(false);
  }

  @Override
  public Connection connect() throws SQLException {
    Connection connection = source.getConnection();
    try (Statement statement = connection.createStatement()) {
      statement.execute(SETTINGS);
      return connection;
    } catch (SQLException failure) {
      connection.close();
      throw failure;
    }
  }

  @Override
  public Connection connectToRead() throws SQLException {
    Connection connection = connect();
    connection.setReadOnly(true);
    connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
    return connection;
  }

  @Override
  public Connection connectToLook() throws SQLException {
    Connection connection = connectToRead();
    // Within a transaction all is of one moment, and rows come some at a time.
    connection.setAutoCommit(false);
    return connection;
  }

  @Override
  public boolean isUsable(Connection kept) {
    try {
      return kept.isValid(SECONDS_TO_ANSWER);
    } catch (SQLException gone) {
      return false;
    }
  }

  @Override
  public int mostReadsAtOnce() {
    return MOST_READS_AT_ONCE;
  }

  @Override
  public <T> T ask(Handle handle, Function<Handle, T> question) {
    return handle.inTransaction(question::apply);
  }

  /**
   * A lock of the transaction, which the server lets go after the commit can be seen: so whoever
   * has it sees all earlier changes, and no change is seen before the one that it follows.
   */
  @Override
  public void takeTurn(Handle writer) {
    writer.execute("SELECT pg_advisory_xact_lock(?, ?)", OUR_LOCKS, WRITING);
  }

  @Override
  public int migrate() {
    return Flyway.configure()
        .dataSource(source)
        .locations(MIGRATIONS)
        .load()
        .migrate()
        .migrationsExecuted;
  }

  @Override
  public long bytes() throws SQLException {
    try (Connection connection = connectToRead()) {
      return DatabaseFile.number(connection, "SELECT pg_total_relation_size('document_version')");
    }
  }

  /**
   * A lock that one process at a time has on some work, held until it is closed or the process
   * ends; empty where another has it.
   */
  public Optional<Connection> tryAlone(String work) throws SQLException {
    Connection connection = connect();
    try (Statement statement = connection.createStatement();
        var answer =
            statement.executeQuery(
                "SELECT pg_try_advisory_lock(" + OUR_LOCKS + ", " + number(work) + ")")) {
      if (answer.next() && answer.getBoolean(1)) {
        return Optional.of(connection);
      }
    }
    connection.close();
    return Optional.empty();
  }

  /** Never that of writing. */
  private static int number(String work) {
    CRC32 sum = new CRC32();
    sum.update(work.getBytes(StandardCharsets.UTF_8));
    return (int) (sum.getValue() & 0x7FFF_FFFF) | 1;
  }
}
