package gapwise.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.ConcurrentLinkedDeque;
import org.jdbi.v3.core.ConnectionFactory;

/** Connections for reading, kept open between reads; as many as there ever were reads at once. */
final class ReadConnections implements ConnectionFactory {
  private final Database database;
  private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();
  private volatile boolean closed;

  ReadConnections(Database database) {
    this.database = database;
  }

  @Override
  public Connection openConnection() throws SQLException {
    Connection kept = idle.poll();
    return kept == null ? database.connect() : kept;
  }

  @Override
  public void closeConnection(Connection connection) throws SQLException {
    idle.push(connection);
    if (closed) {
      closeIdle();
    }
  }

  /** Closes what is idle now, and what is in use as soon as it is given back. */
  void close() throws SQLException {
    closed = true;
    closeIdle();
  }

  private void closeIdle() throws SQLException {
    for (Connection next = idle.poll(); next != null; next = idle.poll()) {
      next.close();
    }
  }
}
