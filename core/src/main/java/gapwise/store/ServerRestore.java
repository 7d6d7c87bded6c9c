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
import org.jdbi.v3.core.Handle;

/** Puts a backup into an empty database of a server, all of it or nothing. */
final class ServerRestore {
  private final StorePlace place;
  private final PostgresDatabase database;
  private final StoreFailures failures;
  private final ServerFailures words;

  ServerRestore(StorePlace place, DatabaseAddress address) {
    this.place = place;
    this.database = new PostgresDatabase(address);
    this.failures = place.failures();
    this.words = new ServerFailures(place);
  }

  /**
   * Does it. The home is the new database's from now on; it may not be in use.
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
