package gapwise.server.cli;

import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Which database keeps the records: that of a server, or the file in the home. */
final class DatabaseOption {
  /** Where the setting stands when the option is not given. */
  static final String VARIABLE = "GAPWISE_DATABASE";

  /** Read as other programs that use a PostgreSQL server read it. */
  private static final String PASSWORD = "PGPASSWORD";

  private static final String FILE = "sqlite";

  @Option(
      names = "--database",
      paramLabel = "ADDRESS",
      description =
          "Database of a PostgreSQL server that keeps the records, as"
              + " jdbc:postgresql://HOST/DATABASE?user=NAME, or sqlite for the file in the home."
              + " Default: the environment variable GAPWISE_DATABASE, else sqlite. A password is"
              + " read from the variable PGPASSWORD or from .pgpass.")
  private Optional<String> address = Optional.empty();

  /** Whether the option itself was given. */
  boolean isGiven() {
    return address.isPresent();
  }

  /** The place of an evidence base with this home. */
  StorePlace with(Path home) {
    String named = address.orElseGet(() -> variable(VARIABLE)).strip();
    return new StorePlace(
        home,
        named.isEmpty() || named.equals(FILE)
            ? Optional.empty()
            : Optional.of(DatabaseAddress.of(named, Optional.of(variable(PASSWORD)))));
  }

  private static String variable(String name) {
    return Objects.requireNonNullElse(System.getenv(name), "");
  }
}
