package gapwise.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.sqlite.SQLiteConnection;

/**
 * A look at every page and every record of a database file, while others read and write it. May be
 * run in a thread of its own and cancelled from another.
 */
public final class SoundnessCheck {
  private final Path file;
  private final StoreFailures failures;
  private volatile boolean cancelled;
  private Optional<Connection> running = Optional.empty();

  SoundnessCheck(Path file, StoreFailures failures) {
    this.file = file;
    this.failures = failures;
  }

  /** Size of the file, which a look at all of it takes time for. */
  public long bytes() {
    try {
      return Files.size(file);
    } catch (IOException unreadable) {
      throw failures.homeUnusable(unreadable);
    }
  }

  /**
   * Does it, on a connection of its own.
   *
   * @return empty when it was cancelled
   */
  public Optional<Soundness> run() {
    try (Connection connection = DatabaseFile.connect(file)) {
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
        running.get().unwrap(SQLiteConnection.class).getDatabase().interrupt();
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
    try (Connection connection = DatabaseFile.connect(file)) {
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
