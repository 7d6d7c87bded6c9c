package gapwise.store;

import gapwise.store.database.DatabaseAddress;
import gapwise.store.database.PostgresDatabase;
import gapwise.store.database.RowCopy;
import gapwise.store.database.SqliteDatabase;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;

/** A copy of all records in a database of a server, of one moment, in one file as a home has it. */
final class ServerBackup {
  private ServerBackup() {}

  static Soundness write(StorePlace place, DatabaseAddress address, Path file) throws IOException {
    ServerFailures words = new ServerFailures(place);
    StoreFailures failures = place.failures();
    // Before the database is read: the note is never ahead of it, but may be by the time it is.
    Optional<HomeMarker.Reached> marker =
        HomeMarker.read(place.home()).filter(note -> !note.base().isEmpty());
    return new CheckedCopy(new OfServer(new PostgresDatabase(address)), failures, file)
        .write(
            source -> {
              if (!ServerOpening.require(source, words, failures).isUpToDate()) {
                throw words.noBase();
              }
              if (marker.isPresent()) {
                ServerOpening.requireMarked(source, marker.get(), words);
              }
            });
  }

  private record OfServer(PostgresDatabase database) implements CheckedCopy.Source {
    @Override
    public Connection open() throws SQLException {
      return database.connectToLook();
    }

    @Override
    public void copy(Connection open, Path file, StoreFailures failures) {
      SqliteDatabase target = new SqliteDatabase(file);
      failures.inWords(target::migrate);
      try (Connection into = target.connect()) {
        into.setAutoCommit(false);
        RowCopy.between(open, into);
        into.commit();
        into.setAutoCommit(true);
        // One file, as a copy of a file is: without a log beside it.
        try (Statement statement = into.createStatement()) {
          statement.execute("PRAGMA journal_mode = DELETE");
        }
      } catch (SQLException failure) {
        throw failures.worded(failure);
      }
    }
  }
}
