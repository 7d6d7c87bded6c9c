package gapwise.store;

import gapwise.store.database.DatabaseAddress;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Objects;
import java.util.Optional;

/**
 * Where an evidence base is.
 *
 * @param home the folder of index, papers, pictures and, where no server keeps them, the records
 * @param database the database of a server that keeps the records; empty for the file in the home
 */
public record StorePlace(Path home, Optional<DatabaseAddress> database) {
  public StorePlace {
    Objects.requireNonNull(home, "home");
    Objects.requireNonNull(database, "database");
  }

  /** A home that keeps its records itself. */
  public static StorePlace of(Path home) {
    return new StorePlace(home, Optional.empty());
  }

  /** Where the records are, for people. */
  public String shown() {
    return database.map(DatabaseAddress::shown).orElse(home.toString());
  }

  /**
   * Opens the records for whoever holds the home's lock.
   *
   * @param expected what must be there
   */
  HomeOpening.Opened opened(Expected expected) throws IOException, SQLException {
    return database.isPresent()
        ? ServerOpening.open(this, database.get(), expected)
        : HomeOpening.open(home, expected, failures());
  }

  /** Refuses, before anything is made, where a home with records is expected and none is. */
  void requireHome(Expected expected) {
    if (database.isEmpty()) {
      HomeOpening.requireHome(home, expected);
    }
  }

  StoreFailures failures() {
    return new StoreFailures(home, shown());
  }
}
