package gapwise.store;

import gapwise.store.database.DatabaseAddress;
import java.nio.file.Path;
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

  StoreFailures failures() {
    return new StoreFailures(home, shown());
  }
}
