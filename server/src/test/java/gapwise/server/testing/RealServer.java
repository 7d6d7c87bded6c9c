package gapwise.server.testing;

import gapwise.store.StorePlace;
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
 * them. Each test has a database to itself. The core has one of its own.
 */
public final class RealServer {
  private static final AtomicInteger DATABASES = new AtomicInteger();

  /** Started by the first test that needs it. */
  private static final class Started {
    static final EmbeddedPostgres SERVER = start();

    private static EmbeddedPostgres start() {
      try {
        return asATeamRunsIt().start();
      } catch (IOException failure) {
        throw new UncheckedIOException(failure);
      }
    }
  }

  private RealServer() {}

  /** A server that has on the disk what it acknowledged. */
  public static EmbeddedPostgres.Builder asATeamRunsIt() {
    return EmbeddedPostgres.builder()
        .setServerConfig("fsync", "on")
        .setServerConfig("full_page_writes", "on")
        .setServerConfig("synchronous_commit", "on");
  }

  /** A new empty database. */
  public static DatabaseAddress newDatabase() {
    String name = "base" + DATABASES.incrementAndGet();
    EmbeddedPostgres server = Started.SERVER;
    try (Connection connection =
            DriverManager.getConnection(server.getJdbcUrl("postgres", "postgres"));
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE DATABASE " + name);
    } catch (SQLException failure) {
      throw new IllegalStateException(name, failure);
    }
    return address(server, name);
  }

  /** The address of a database of a server. */
  public static DatabaseAddress address(EmbeddedPostgres server, String name) {
    return DatabaseAddress.of(server.getJdbcUrl("postgres", name), Optional.empty());
  }

  /** A home whose records are in a new empty database. */
  public static StorePlace newPlace(Path home) {
    return new StorePlace(home, Optional.of(newDatabase()));
  }
}
