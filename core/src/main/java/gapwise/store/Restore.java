package gapwise.store;

import gapwise.problem.Problem;
import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** Puts a backup into a home, which nobody may have open meanwhile, or makes one of it. */
public final class Restore {
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH-mm-ss'Z'").withZone(ZoneOffset.UTC);

  private final Path backup;
  private final Path home;
  private final Clock clock;
  private final HomeFiles files;

  private Restore(Path backup, Path home, Clock clock) {
    this.backup = backup;
    this.home = home;
    this.clock = clock;
    this.files = new HomeFiles(home);
  }

  /**
   * What was done.
   *
   * @param soundness what was found in the records that are in the home now
   * @param replaced where the database lies that was there before; empty when there was none
   */
  public record Done(Soundness soundness, Optional<Path> replaced) {}

  /**
   * Puts a backup, or any sound database file of the program, into a home. What was there before is
   * kept beside it. When something is wrong with the backup nothing has changed.
   *
   * @param clock tells the time that the name of the replaced file holds
   * @throws StoreUnusableException when the backup cannot be used or the home is in use
   */
  public static Done of(Path backup, Path home, Clock clock) {
    return new Restore(backup, home, clock).restored();
  }

  /**
   * The same for an evidence base whose records may be on a server: then the backup goes into an
   * empty database, and nothing is replaced.
   */
  public static Done of(Path backup, StorePlace place, Clock clock) {
    Restore restore = new Restore(backup, place.home(), clock);
    return place.database().isPresent()
        ? restore.intoServer(new ServerCopies(place, place.database().get()))
        : restore.restored();
  }

  private Done intoServer(ServerCopies server) {
    if (!Files.isRegularFile(backup)) {
      throw noBackup("There is no such file.");
    }
    Soundness found = server.restore(backup, this::requireUsable);
    try {
      // The home is the database's now, whose note keeps others from opening a file there.
      Path database = files.database();
      Optional<Path> replaced = keep(database);
      Files.deleteIfExists(database);
      return new Done(found, replaced);
    } catch (IOException unusable) {
      throw new StoreFailures(home).homeUnusable(unusable);
    }
  }

  private Done restored() {
    if (!Files.isRegularFile(backup)) {
      throw noBackup("There is no such file.");
    }
    StoreFailures failures = new StoreFailures(home);
    try (HomeLock lock = HomeLock.alone(home).orElseThrow(failures::inUse)) {
      files.tighten();
      Path database = files.database();
      Path incoming = database.resolveSibling(Database.FILE + ".incoming");
      Files.deleteIfExists(incoming);
      Soundness found = CheckedCopy.ofFile(backup, backup, incoming).write(this::requireUsable);
      Optional<Path> replaced = keep(database);
      Files.move(incoming, database, StandardCopyOption.ATOMIC_MOVE);
      CheckedCopy.flushFolder(OwnerOnly.folderOf(database));
      note(database);
      return new Done(found, replaced);
    } catch (IOException unusable) {
      throw failures.homeUnusable(unusable);
    } catch (SQLException failure) {
      throw failures.worded(failure);
    }
  }

  private void requireUsable(Connection source) throws SQLException {
    Layout layout = Layout.of(source);
    if (layout.newer().isPresent()) {
      throw new StoreFailures(backup).newer(layout.newer().get());
    }
    if (layout.isForeign() || !layout.versions()) {
      throw noBackup("It is a database, but no backup of this program.");
    }
  }

  /**
   * Sets aside the database that is there, with the log that belongs to it. The database keeps its
   * name as well until the new one takes it, so that there is one at each moment.
   */
  private Optional<Path> keep(Path database) throws IOException {
    Path log = DatabaseFile.log(database);
    Optional<Path> replaced = Optional.empty();
    if (Files.exists(database) || Files.exists(log)) {
      Path kept = free(database);
      if (Files.exists(database)) {
        link(kept, database);
      }
      if (Files.exists(log)) {
        Files.move(log, DatabaseFile.log(kept));
      }
      replaced = Optional.of(kept);
    }
    Files.deleteIfExists(DatabaseFile.logIndex(database));
    return replaced;
  }

  private Path free(Path database) {
    String name = Database.FILE + ".replaced-" + SECOND.format(clock.instant());
    Path kept = database.resolveSibling(name);
    for (int count = 2; Files.exists(kept); count++) {
      kept = database.resolveSibling(name + "-" + count);
    }
    return kept;
  }

  private static void link(Path kept, Path database) throws IOException {
    try {
      Files.createLink(kept, database);
    } catch (UnsupportedOperationException | IOException noLinks) {
      // Such as on a memory stick: then there is a moment without a database.
      Files.move(database, kept);
    }
  }

  private void note(Path database) throws IOException, SQLException {
    try (Connection connection = DatabaseFile.connect(database);
        HomeMarker marker = HomeMarker.open(home)) {
      marker.set(HomeMarker.Reached.last(connection));
    }
  }

  private StoreUnusableException noBackup(String message) {
    return new StoreUnusableException(
        new Problem(
            backup.toString(),
            "no-backup",
            message + " Name a file that the command backup wrote."));
  }
}
