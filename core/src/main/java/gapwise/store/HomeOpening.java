package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import gapwise.store.database.PostgresDatabase;
import gapwise.store.database.SqliteDatabase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The way into a home whose locks are held: looks whether the database is the one that was left
 * there, and only then brings it to this program's layout.
 */
final class HomeOpening {
  private final Path home;
  private final HomeFiles files;
  private final Expected expected;
  private final StoreFailures failures;
  private final HomeFailures words;
  private final Optional<HomeMarker.Reached> marker;
  private final List<String> notices = new ArrayList<>();
  private boolean putBack;

  /** Then nothing is migrated, which would wait for whatever another process is writing. */
  private boolean upToDate;

  private HomeOpening(Path home, Expected expected, StoreFailures failures) throws IOException {
    this.home = home;
    this.files = new HomeFiles(home);
    this.expected = expected;
    this.failures = failures;
    this.words = new HomeFailures(home);
    this.marker = HomeMarker.read(home);
  }

  /**
   * A home that may be used.
   *
   * @param putBack whether its database is a backup that was put in its place since it was last
   *     open, so that whatever was derived from the records must be made anew
   * @param notices sentences for people about what was found
   */
  record Opened(Database database, HomeMarker marker, boolean putBack, List<String> notices) {

    /** Does some work unless another process that shares the records is at it; whether it was. */
    boolean doAlone(HomeLock home, String work, Runnable task, StoreFailures failures) {
      try (AutoCloseable alone = tryAlone(home, work).orElse(null)) {
        if (alone != null) {
          task.run();
        }
        return alone != null;
      } catch (RuntimeException failure) {
        throw failure;
      } catch (Exception failure) {
        throw failures.worded(failure);
      }
    }

    private Optional<? extends AutoCloseable> tryAlone(HomeLock home, String work)
        throws IOException, SQLException {
      return database instanceof PostgresDatabase server
          ? server.tryAlone(work)
          : home.tryAlone(work);
    }
  }

  /** Refuses, before anything is made, where a home is expected and none is. */
  static void requireHome(Path home, Expected expected) {
    if (!expected.maybeNothing() && !new HomeFiles(home).isHome()) {
      throw new HomeFailures(home).noHome();
    }
  }

  static Opened open(Path home, Expected expected, StoreFailures failures)
      throws IOException, SQLException {
    return new HomeOpening(home, expected, failures).open();
  }

  private Opened open() throws IOException, SQLException {
    notices.addAll(files.tighten());
    if (marker.filter(note -> !note.base().isEmpty()).isPresent()) {
      throw words.onServer();
    }
    Path file = files.database();
    if (Files.exists(file) && Files.size(file) > 0) {
      requireTheSame(file);
    } else {
      requireNew(file);
      OwnerOnly.fileIfAbsent(file);
    }
    Database database = SqliteDatabase.ofHome(home);
    if (!upToDate) {
      failures.inWords(database::migrate);
    }
    HomeMarker note = HomeMarker.open(home);
    try (Connection connection = database.connect()) {
      note.set(HomeMarker.Reached.last(connection));
      if (putBack) {
        DatabaseFile.setBackup(connection, false);
      }
    } catch (IOException | SQLException failure) {
      note.close();
      throw failure;
    }
    return new Opened(database, note, putBack, List.copyOf(notices));
  }

  private void requireNew(Path file) throws IOException {
    requireNothingHeld(Files.exists(file));
    Path log = DatabaseFile.log(file);
    if (files.isDatabaseElsewhere() || (Files.exists(log) && Files.size(log) > 0)) {
      throw words.missing();
    }
  }

  /** Refuses an empty database where the home's own note, or else others, know of changes. */
  private void requireNothingHeld(boolean fileIsThere) {
    HomeMarker.Reached held = marker.orElse(HomeMarker.Reached.seen(expected.change()));
    if (held.change() > 0) {
      throw words.missing(fileIsThere, held);
    }
  }

  private void requireTheSame(Path file) throws SQLException, IOException {
    try (Connection connection = DatabaseFile.connect(file)) {
      Layout layout = Layout.of(connection);
      if (layout.newer().isPresent()) {
        throw failures.newer(layout.newer().get());
      }
      if (layout.isForeign()) {
        throw words.foreign();
      }
      upToDate = layout.isUpToDate();
      if (!layout.versions()) {
        requireNothingHeld(true);
        return;
      }
      if (DatabaseFile.isBackup(connection)) {
        Examination.requireSound(connection, failures);
        putBack = true;
        notices.add(putBack(HomeMarker.Reached.last(connection)));
      } else {
        requireReached(connection);
        if (layout.isOlder()) {
          // What is damaged must not be carried into the new layout as if it were sound.
          Examination.requireSound(connection, failures);
        }
      }
    }
  }

  private String putBack(HomeMarker.Reached reached) {
    return "The records come from a backup that was put back: "
        + (reached.change() == 0
            ? "it holds none."
            : "they go to change " + reached.change() + ", written at " + reached.when() + ".")
        + marker
            .filter(before -> before.change() > reached.change())
            .map(before -> " Before, this home had been at change " + before.change() + ".")
            .orElse("");
  }

  private void requireReached(Connection connection) throws SQLException, IOException {
    HomeMarker.Reached last = HomeMarker.Reached.last(connection);
    if (last.change() == 0) {
      requireNothingHeld(true);
    }
    if (marker.isPresent()) {
      marker.get().requireIn(connection, words);
    } else if (Files.exists(home.resolve(HomeMarker.FILE))) {
      notices.add(
          "The note "
              + HomeMarker.FILE
              + ", which tells whether records are missing, could not be read and was made anew.");
    }
  }
}
