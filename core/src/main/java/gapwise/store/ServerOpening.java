package gapwise.store;

import gapwise.store.database.DatabaseAddress;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import gapwise.store.database.PostgresDatabase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The way into a database of a server for a home whose locks are held: looks whether it is the one
 * that the home had, and only then brings it to this program's layout.
 */
final class ServerOpening {
  private final StorePlace place;
  private final PostgresDatabase database;
  private final Expected expected;
  private final StoreFailures failures;
  private final ServerFailures words;
  private final Optional<HomeMarker.Reached> marker;
  private final List<String> notices = new ArrayList<>();

  private ServerOpening(StorePlace place, DatabaseAddress address, Expected expected)
      throws IOException {
    this.place = place;
    this.database = new PostgresDatabase(address);
    this.expected = expected;
    this.failures = place.failures();
    this.words = new ServerFailures(place);
    this.marker = HomeMarker.read(place.home());
  }

  static HomeOpening.Opened open(StorePlace place, DatabaseAddress address, Expected expected)
      throws IOException, SQLException {
    return new ServerOpening(place, address, expected).open();
  }

  private HomeOpening.Opened open() throws IOException, SQLException {
    notices.addAll(new HomeFiles(place.home()).tighten());
    if (!isUpToDate()) {
      failures.inWords(database::migrate);
    }
    // A home that has seen nothing of this base yet may hold an index of another one.
    boolean fresh = marker.isEmpty() || marker.get().change() == 0;
    try (Connection connection = database.connectToLook()) {
      HomeMarker note = HomeMarker.open(place.home(), identity(connection));
      try {
        note.set(HomeMarker.Reached.last(connection));
      } catch (IOException | SQLException failure) {
        note.close();
        throw failure;
      }
      return new HomeOpening.Opened(database, note, fresh, List.copyOf(notices));
    }
  }

  /**
   * Refuses a database that is not the home's; whether there is nothing to change in its layout.
   */
  private boolean isUpToDate() throws IOException, SQLException {
    try (Connection connection = database.connectToLook()) {
      Layout layout = require(connection, words, failures);
      requireTheSame(connection, layout);
      if (DatabaseFile.texts(connection, "SHOW fsync").contains("off")) {
        notices.add(
            "The database server runs with fsync = off, so that a lack of power may lose what was"
                + " acknowledged. Have it set to on.");
      }
      return layout.isUpToDate();
    }
  }

  /** Refuses a database that this program cannot keep records in. */
  static Layout require(Connection connection, ServerFailures words, StoreFailures failures)
      throws SQLException {
    String encoding = DatabaseFile.texts(connection, "SHOW server_encoding").get(0);
    if (!encoding.equals("UTF8")) {
      throw words.encoding(encoding);
    }
    Layout layout = Layout.of(connection);
    if (layout.newer().isPresent()) {
      throw failures.newer(layout.newer().get());
    }
    if (layout.isForeign()) {
      throw words.foreign();
    }
    return layout;
  }

  private void requireTheSame(Connection connection, Layout layout)
      throws IOException, SQLException {
    requireOnServer();
    if (!layout.versions()) {
      if (!expected.maybeNothing()) {
        throw words.noBase();
      }
      requireNothingHeld();
      return;
    }
    if (marker.isPresent()) {
      requireMarked(connection, marker.get(), words);
    }
    if (HomeMarker.Reached.last(connection).change() == 0) {
      requireNothingHeld();
    }
  }

  /** Refuses a home that has records of its own, which this one would seem to replace. */
  private void requireOnServer() throws IOException {
    Path file = new HomeFiles(place.home()).database();
    boolean inFile =
        marker.isPresent()
            ? marker.get().base().isEmpty() && marker.get().change() > 0
            : Files.exists(file) && Files.size(file) > 0;
    if (inFile) {
      throw words.inHome();
    }
  }

  private void requireNothingHeld() {
    HomeMarker.Reached held = marker.orElse(HomeMarker.Reached.seen(expected.change()));
    if (held.change() > 0) {
      throw words.missing(true, held);
    }
  }

  /** Refuses a database that is not the one of a note, or ends before it. */
  static void requireMarked(Connection connection, HomeMarker.Reached note, ServerFailures words)
      throws SQLException {
    if (!note.base().isEmpty() && !note.base().equals(identity(connection))) {
      throw words.other(note);
    }
    note.requireIn(connection, words);
  }

  /** What tells this base from every other. */
  static String identity(Connection connection) throws SQLException {
    return DatabaseFile.texts(connection, "SELECT id FROM base_identity").get(0);
  }
}
