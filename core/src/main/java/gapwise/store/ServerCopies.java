package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseAddress;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.PostgresDatabase;
import gapwise.store.database.RowCopy;
import gapwise.store.database.SqliteDatabase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Copies between a database of a server and a file as a home has it: a backup, of one moment, and a
 * backup put into an empty database, all of it or nothing.
 */
final class ServerCopies {
  private final StorePlace place;
  private final PostgresDatabase database;
  private final StoreFailures failures;
  private final ServerFailures words;

  ServerCopies(StorePlace place, DatabaseAddress address) {
    this.place = place;
    this.database = new PostgresDatabase(address);
    this.failures = place.failures();
    this.words = new ServerFailures(place);
  }

  /** Writes a backup; {@link Backup#write(StorePlace, Path)}. */
  Soundness backUp(Path file) throws IOException {
    // Before the database is read: the note is never ahead of it, but may be by the time it is.
    Optional<HomeMarker.Reached> marker =
        HomeMarker.read(place.home()).filter(note -> !note.base().isEmpty());
    return new CheckedCopy(new OfServer(database), failures, file)
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

  /**
   * Puts a backup into the database. The home is the new database's from now on; it may not be in
   * use.
   *
   * @param usable what must hold for the backup, besides that it is sound
   * @return what was found in the records that are in the database now
   */
  Soundness restore(Path backup, CheckedCopy.Requirement usable) {
    Path home = place.home();
    try (HomeLock lock = HomeLock.alone(home).orElseThrow(failures::inUse)) {
      Path incoming = home.resolve(Database.FILE + ".carried");
      Files.deleteIfExists(incoming);
      try {
        // A copy, for an older backup is brought to this program's layout before it is carried
        // over.
        CheckedCopy.ofFile(backup, backup, incoming).write(usable);
        return carry(incoming);
      } finally {
        Files.deleteIfExists(incoming);
        Files.deleteIfExists(DatabaseFile.log(incoming));
        Files.deleteIfExists(DatabaseFile.logIndex(incoming));
      }
    } catch (IOException unusable) {
      throw failures.homeUnusable(unusable);
    } catch (SQLException failure) {
      throw failures.worded(failure);
    }
  }

  private Soundness carry(Path incoming) throws IOException, SQLException {
    new StoreFailures(incoming).inWords(new SqliteDatabase(incoming)::migrate);
    try (Connection look = database.connectToLook()) {
      ServerOpening.require(look, words, failures);
    }
    failures.inWords(database::migrate);
    try (Connection from = DatabaseFile.connect(incoming)) {
      StoreWriter writer = failures.inWords(() -> new StoreWriter(database, failures));
      try {
        Soundness found = failures.inWords(() -> writer.inTransaction(into -> copy(from, into)));
        note();
        return found;
      } finally {
        writer.close();
      }
    }
  }

  /** Copies all and reads it back before it counts. */
  private Soundness copy(Connection from, Handle into) {
    try {
      Connection to = into.getConnection();
      long there = HomeMarker.Reached.last(to).change();
      if (there > 0) {
        throw words.notEmpty(there);
      }
      RowCopy.between(from, to);
      Examination original = Examination.of(from, Long.MAX_VALUE, () -> false);
      Examination copied = Examination.of(to, Long.MAX_VALUE, () -> false);
      if (!copied.soundness().isSound() || !copied.digest().equals(original.digest())) {
        throw failures.unusable(
            "store-failed",
            "What was written to the database does not read back as it was, so nothing of it was"
                + " kept. Have whoever looks after the server check its disk.");
      }
      return copied.soundness();
    } catch (SQLException failure) {
      throw failures.worded(failure);
    }
  }

  /** The home has seen nothing of this base yet, so that its index is made anew. */
  private void note() throws IOException, SQLException {
    try (Connection connection = database.connectToLook();
        HomeMarker marker = HomeMarker.open(place.home(), ServerOpening.identity(connection))) {
      marker.set(HomeMarker.Reached.seen(0));
    }
  }
}
