package gapwise.drill;

import gapwise.store.StorePlace;
import gapwise.store.database.DatabaseAddress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;

/** The log that a database writes before all else: while it grows, something is being written. */
final class GrowingLog {
  private final Path file;
  private final Optional<Connection> server;

  GrowingLog(StorePlace place) throws SQLException {
    this.file = place.home().resolve("gapwise.db-wal");
    Optional<DatabaseAddress> address = place.database();
    this.server =
        address.isPresent()
            ? Optional.of(DriverManager.getConnection(address.get().url()))
            : Optional.empty();
  }

  long bytes() throws IOException, SQLException {
    if (server.isEmpty()) {
      return Files.exists(file) ? Files.size(file) : 0;
    }
    try (Statement statement = server.get().createStatement();
        ResultSet row =
            statement.executeQuery("SELECT pg_current_wal_insert_lsn() - '0/0'::pg_lsn")) {
      row.next();
      return row.getLong(1);
    }
  }
}
