package gapwise.store.database;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import org.postgresql.Driver;
import org.postgresql.PGProperty;

/**
 * Which database of which server keeps the records.
 *
 * @param url as the driver reads it, without any password
 * @param password empty where the server asks for none, or the driver finds it in its file of
 *     passwords
 */
public record DatabaseAddress(String url, Optional<String> password) {
  private static final String FORM = "jdbc:postgresql://HOST:PORT/DATABASE?user=NAME";

  public DatabaseAddress {
    Objects.requireNonNull(password, "password");
    properties(url);
  }

  /**
   * Reads an address.
   *
   * @throws WrongInputException when it is none, or holds a password, which others could read then
   */
  public static DatabaseAddress of(String url, Optional<String> password) {
    return new DatabaseAddress(url.strip(), password.filter(given -> !given.isEmpty()));
  }

  private static Properties properties(String url) {
    if (!url.startsWith("jdbc:postgresql:")) {
      throw wrong("An address of a PostgreSQL database begins with jdbc:postgresql: and reads");
    }
    Properties read = Driver.parseURL(url, null);
    if (read == null) {
      throw wrong("The address of the database cannot be read. It reads");
    }
    for (String name : read.stringPropertyNames()) {
      if (name.toLowerCase(Locale.ROOT).contains("password")) {
        throw wrong(
            "The address of the database holds a password, which others on this machine could"
                + " read. Put the password into the environment variable PGPASSWORD or into the"
                + " driver's file of passwords (.pgpass, or passfile=FILE), and write");
      }
    }
    return read;
  }

  private static WrongInputException wrong(String words) {
    return new WrongInputException(
        List.of(new Problem("database", "database-address", words + " " + FORM + ".")));
  }

  /** The database and its server in words. */
  public String shown() {
    Properties read = properties(url);
    return "PostgreSQL database "
        + PGProperty.PG_DBNAME.getOrDefault(read)
        + " at "
        + PGProperty.PG_HOST.getOrDefault(read)
        + ":"
        + PGProperty.PG_PORT.getOrDefault(read);
  }

  /** Tells no password. */
  @Override
  public String toString() {
    return shown();
  }
}
