package gapwise.store.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jdbi.v3.core.ConnectionFactory;

/**
 * Connections for reading, kept open between reads; as many as there ever were reads at once, and
 * no more than the database has room for. A kept one that was lost meanwhile is opened anew.
 */
public final class ReadConnections implements ConnectionFactory {
  /** Questions take milliseconds; who waits so long is better told to come again. */
  private static final int MOST_SECONDS_OF_WAITING = 10;

  private final Database database;
  private final Semaphore free;
  private final ThreadLocal<Integer> held = ThreadLocal.withInitial(() -> 0);
  private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();
  private volatile boolean closed;

  public ReadConnections(Database database) {
    this.database = database;
    this.free = new Semaphore(database.mostReadsAtOnce(), true);
  }

  @Override
  public Connection openConnection() throws SQLException {
    waitForRoom();
    try {
      Connection opened = keptOrNew();
      held.set(held.get() + 1);
      return opened;
    } catch (SQLException | RuntimeException failure) {
      leaveRoom();
      throw failure;
    }
  }

  /**
   * Who asks within the answer to a question gets one beyond the number: waiting could be for good.
   */
  private void waitForRoom() throws SQLException {
    if (held.get() > 0) {
      return;
    }
    try {
      if (!free.tryAcquire(MOST_SECONDS_OF_WAITING, TimeUnit.SECONDS)) {
        throw new SQLException("all connections are in use", PostgresWords.TOO_MANY);
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new SQLException("stopped while waiting", PostgresWords.CANCELLED, stopped);
    }
  }

  private void leaveRoom() {
    if (held.get() == 0) {
      free.release();
    }
  }

  private Connection keptOrNew() throws SQLException {
    for (Connection kept = idle.poll(); kept != null; kept = idle.poll()) {
      if (database.isUsable(kept)) {
        return kept;
      }
      kept.close();
    }
    return database.connectToRead();
  }

  @Override
  public void closeConnection(Connection connection) throws SQLException {
    held.set(held.get() - 1);
    leaveRoom();
    if (!connection.isClosed()) {
      idle.push(connection);
    }
    if (closed) {
      closeIdle();
    }
  }

  /** Closes what is idle now, and what is in use as soon as it is given back. */
  public void close() throws SQLException {
    closed = true;
    closeIdle();
  }

  private void closeIdle() throws SQLException {
    for (Connection next = idle.poll(); next != null; next = idle.poll()) {
      next.close();
    }
  }
}
