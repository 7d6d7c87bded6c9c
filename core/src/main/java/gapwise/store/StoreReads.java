package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.ReadConnections;
import java.sql.SQLException;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Questions to the database, each on a connection of its own, so that none waits for a write. */
final class StoreReads {
  private final ReadConnections connections;
  private final Database where;
  private final Jdbi database;
  private final StoreFailures failures;

  StoreReads(Database database, StoreFailures failures) {
    this.where = database;
    this.connections = new ReadConnections(database);
    this.database = Jdbi.create(connections);
    this.failures = failures;
  }

  <T> T ask(Function<Handle, T> question) {
    return failures.inWords(
        () -> {
          // Not withHandle: that would give a read within a consumer the outer read's older view.
          try (Handle handle = database.open()) {
            return where.ask(handle, question);
          }
        });
  }

  void run(Consumer<Handle> question) {
    ask(
        handle -> {
          question.accept(handle);
          return null;
        });
  }

  void close() throws SQLException {
    connections.close();
  }
}
