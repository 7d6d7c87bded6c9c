package gapwise.store;

import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Layout;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;

/**
 * A copy of all records of a home in one file. The home may be open, here or in another process,
 * and be written to; it is neither locked nor changed.
 */
public final class Backup {
  private final Path home;
  private final HomeFailures words;

  private Backup(Path home) {
    this.home = home;
    this.words = new HomeFailures(home);
  }

  /** The newest layout of records that this program knows, as number and name. */
  public static String layout() {
    return Layout.KNOWN.get(Layout.KNOWN.size() - 1);
  }

  /**
   * Writes it. The file appears under its name only when the home was found sound and the copy was
   * read back and compared.
   *
   * @return what was found in the copy: how many versions, up to which change
   * @throws FileAlreadyExistsException when there is such a file: an older backup is never
   *     overwritten
   * @throws StoreUnusableException when there is no home, it is damaged or has lost changes, or the
   *     file cannot be written; there is no such file then
   */
  public static Soundness write(Path home, Path file) throws IOException {
    return new Backup(home).write(file);
  }

  /**
   * The same of an evidence base whose records may be on a server: the file is of the same kind, so
   * that it can be put into either.
   */
  public static Soundness write(StorePlace place, Path file) throws IOException {
    return place.database().isPresent()
        ? new ServerCopies(place, place.database().get()).backUp(file)
        : write(place.home(), file);
  }

  private Soundness write(Path file) throws IOException {
    HomeOpening.requireHome(home, Expected.A_HOME);
    // Before the database is read: the note is never ahead of it, but may be by the time it is.
    Optional<HomeMarker.Reached> marker = HomeMarker.read(home);
    if (marker.isPresent() && !marker.get().base().isEmpty()) {
      throw words.onServer();
    }
    HomeFiles files = new HomeFiles(home);
    Path database = files.database();
    boolean there = Files.exists(database);
    if (!there || Files.size(database) == 0) {
      throw marker.isPresent() && marker.get().change() > 0
          ? words.missing(there, marker.get())
          : files.isDatabaseElsewhere() ? words.missing() : words.noHome();
    }
    return CheckedCopy.ofFile(database, home, file).write(source -> require(source, marker));
  }

  private void require(Connection source, Optional<HomeMarker.Reached> marker) throws SQLException {
    Layout layout = Layout.of(source);
    if (layout.newer().isPresent()) {
      throw new StoreFailures(home).newer(layout.newer().get());
    }
    if (layout.isForeign()) {
      throw words.foreign();
    }
    if (!layout.versions()) {
      throw words.noHome();
    }
    if (marker.isPresent() && !DatabaseFile.isBackup(source)) {
      marker.get().requireIn(source, words);
    }
  }
}
