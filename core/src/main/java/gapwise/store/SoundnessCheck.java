package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Dialect;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

/**
 * A look at every page and every record of a database, while others read and write it. May be run
 * in a thread of its own and cancelled from another.
 */
public final class SoundnessCheck {
  private final Database database;
  private final StoreFailures failures;
  private volatile boolean cancelled;
  private Optional<Connection> running = Optional.empty();

  SoundnessCheck(Database database, StoreFailures failures) {
    this.database = database;
    this.failures = failures;
  }

  /** Size of the records, which a look at all of it takes time for. */
  public long bytes() {
    try {
      return database.bytes();
    } catch (IOException unreadable) {
      throw failures.homeUnusable(unreadable);
    } catch (SQLException failure) {
      throw failures.worded(failure);
    }
  }

  /**
   * Does it, on a connection of its own.
   *
   * @return empty when it was cancelled
   */
  public Optional<Soundness> run() {
    try (Connection connection = database.connectToLook()) {
      setRunning(Optional.of(connection));
      Soundness found = Examination.of(connection, Long.MAX_VALUE, () -> cancelled).soundness();
      setRunning(Optional.empty());
      return cancelled ? Optional.empty() : Optional.of(found);
    } catch (SQLException failure) {
      if (cancelled) {
        return Optional.empty();
      }
      throw failures.worded(failure);
    } finally {
      setRunning(Optional.empty());
    }
  }

  private synchronized void setRunning(Optional<Connection> connection) {
    running = connection;
  }

  /** Has it stop at once; to cancel what has ended or not begun does no harm. */
  public synchronized void cancel() {
    cancelled = true;
    if (running.isPresent()) {
      try {
        Dialect.of(running.get()).stop(running.get());
      } catch (SQLException ended) {
        throw failures.worded(ended);
      }
    }
  }

  /** Refuses to go on with a file in which more than single records was found damaged. */
  public void requireIntact(Soundness found) {
    if (!found.structure().isEmpty()) {
      throw failures.damaged(found);
    }
  }

  /**
   * Refuses to go on where the database cannot even count its versions, or some are missing from
   * the change log. A cheap look, which reads little of the file.
   */
  public void requireComplete() {
    try (Connection connection = database.connectToLook()) {
      long missing =
          DatabaseFile.number(
              connection,
              "SELECT COALESCE(MAX(change_number), 0) - COUNT(*) FROM document_version");
      if (missing != 0) {
        Examination.requireSound(connection, failures);
      }
    } catch (SQLException failure) {
      throw failures.worded(failure);
    }
  }
}
