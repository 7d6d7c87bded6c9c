package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.PostgresWords;
import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The one connection by which a store writes, opened anew when it was lost. Not safe for threads:
 * who uses it holds the store's lock of writing.
 */
final class StoreWriter {
  private final Database database;
  private final Jdbi source;
  private final StoreFailures failures;
  private Optional<Handle> kept;

  StoreWriter(Database database, StoreFailures failures) {
    this.database = database;
    this.source = Jdbi.create(database::connect);
    this.failures = failures;
    this.kept = Optional.of(source.open());
  }

  /**
   * Does some work in a transaction of its own, which has its turn among all writers, in whatever
   * process, from its start. Work that ends the transaction itself has its own way.
   *
   * @throws StoreUnusableException store-unknown when the connection was lost while the work was
   *     being committed
   */
  <T> T inTransaction(Function<Handle, T> work) {
    Handle handle = usable();
    T done;
    try {
      handle.begin();
      database.takeTurn(handle);
      done = work.apply(handle);
    } catch (RuntimeException | Error failure) {
      rollBack(handle, failure);
      throw failure;
    }
    if (handle.isInTransaction()) {
      commit(handle);
    }
    return done;
  }

  private Handle usable() {
    if (kept.filter(handle -> database.isUsable(handle.getConnection())).isEmpty()) {
      close();
      kept = Optional.of(source.open());
    }
    return kept.orElseThrow();
  }

  private void commit(Handle handle) {
    try {
      handle.commit();
    } catch (JdbiException failure) {
      if (failure.getCause() instanceof SQLException sql && PostgresWords.isLostConnection(sql)) {
        awaitEnd(failure);
        throw failures.unusable(PostgresWords.unknown(), failure);
      }
      rollBack(handle, failure);
      throw failure;
    }
  }

  /**
   * Waits for the turn that the lost transaction may still have, so that whoever looks now whether
   * it was written is not answered too early. Where the server is away, nobody can look either.
   */
  private void awaitEnd(JdbiException lost) {
    try {
      Handle again = usable();
      again.begin();
      database.takeTurn(again);
      again.rollback();
    } catch (JdbiException away) {
      lost.addSuppressed(away);
    }
  }

  private static void rollBack(Handle handle, Throwable failure) {
    try {
      if (handle.isInTransaction()) {
        handle.rollback();
      }
    } catch (JdbiException lost) {
      // Then the database rolls back by itself.
      failure.addSuppressed(lost);
    }
  }

  /** Lets go of the connection; what is written next opens another. */
  void close() {
    Optional<Handle> last = kept;
    kept = Optional.empty();
    try {
      last.ifPresent(Handle::close);
    } catch (JdbiException lost) {
      // There was nothing left to close.
      return;
    }
  }
}
