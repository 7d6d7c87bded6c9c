package gapwise.store;

import gapwise.store.database.DatabaseAddress;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A PostgreSQL server that runs for the tests of this module, in folders of its own, and ends with
 * them. Each test has a database to itself.
 */
final class RealServer {
  private static final AtomicInteger DATABASES = new AtomicInteger();

  /** Started by the first test that needs it. */
  private static final class Started {
    static final EmbeddedPostgres SERVER = start();
  }

  private RealServer() {}

  static EmbeddedPostgres start() {
    try {
      // As a team runs it: what was acknowledged is on the disk.
      return EmbeddedPostgres.builder()
          .setServerConfig("fsync", "on")
          .setServerConfig("full_page_writes", "on")
          .setServerConfig("synchronous_commit", "on")
          .start();
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  /** A new empty database. */
  static DatabaseAddress newDatabase() {
    String name = "base" + DATABASES.incrementAndGet();
    execute(address("postgres"), "CREATE DATABASE " + name);
    return address(name);
  }

  private static DatabaseAddress address(String name) {
    return DatabaseAddress.of(Started.SERVER.getJdbcUrl("postgres", name), Optional.empty());
  }

  /** A home whose records are in a new empty database. */
  static StorePlace newPlace(Path home) {
    return new StorePlace(home, Optional.of(newDatabase()));
  }

  /** Has the server do something behind the back of the program. */
  static void execute(DatabaseAddress address, String statement) {
    try (Connection connection = DriverManager.getConnection(address.url());
        Statement executed = connection.createStatement()) {
      executed.execute(statement);
    } catch (SQLException failure) {
      throw new IllegalStateException(statement, failure);
    }
  }
}
