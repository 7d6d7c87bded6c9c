package gapwise.store;

import gapwise.problem.Problem;
import gapwise.store.database.DatabaseFile;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;

/**
 * A copy of a database in one file, of one moment, while others read and write on. The copy appears
 * under its name only when the source was found sound, the copy was read back and found sound and
 * equal to it, and all of it is on the disk.
 */
final class CheckedCopy {
  private final Source source;
  private final StoreFailures ofSource;
  private final StoreFailures ofTarget;

  /** Where copies come from. */
  interface Source {
    /** A connection that reads all of one moment. */
    Connection open() throws SQLException;

    /**
     * Writes all that it reads into an empty database file.
     *
     * @param failures words for what the new file suffers
     */
    void copy(Connection open, Path file, StoreFailures failures);
  }

  /**
   * @param ofSource words for what the source suffers
   */
  CheckedCopy(Source source, StoreFailures ofSource, Path target) {
    this.source = source;
    this.ofSource = ofSource;
    this.ofTarget = new StoreFailures(target);
  }

  /**
   * A copy of a file.
   *
   * @param named what it is called in messages: the home it belongs to, or the file itself
   */
  static CheckedCopy ofFile(Path file, Path named, Path target) {
    return new CheckedCopy(new OfFile(file), new StoreFailures(named), target);
  }

  private record OfFile(Path from) implements Source {
    @Override
    public Connection open() throws SQLException {
      return DatabaseFile.connect(from);
    }

    @Override
    public void copy(Connection open, Path file, StoreFailures failures) {
      try (PreparedStatement copy = open.prepareStatement("VACUUM INTO ?")) {
        copy.setString(1, file.toString());
        copy.executeUpdate();
      } catch (SQLException failure) {
        throw failures.worded(failure);
      }
    }
  }

  /** What must hold for a source, besides that it is sound. */
  @FunctionalInterface
  interface Requirement {
    void check(Connection source) throws SQLException;
  }

  /**
   * Writes it.
   *
   * @return what was found in the copy
   * @throws FileAlreadyExistsException when there is such a file
   */
  Soundness write(Requirement requirement) throws IOException {
    Path target = ofTarget.home().toAbsolutePath();
    if (Files.exists(target)) {
      throw new FileAlreadyExistsException(ofTarget.home().toString());
    }
    try {
      return write(target, requirement);
    } catch (IOException unwritable) {
      throw new StoreUnusableException(
          new Problem(
              ofTarget.home().toString(),
              "file-unusable",
              "The file cannot be written. Check that its folder is there, that there is room, and"
                  + " that you may write to it."),
          unwritable);
    }
  }

  private Soundness write(Path target, Requirement requirement) throws IOException {
    OwnerOnly.folders(OwnerOnly.folderOf(target));
    try (Unfinished unfinished = Unfinished.of(target)) {
      Examination original = copy(requirement, unfinished.file());
      Soundness copied = compared(original, unfinished.file());
      flush(unfinished.file(), StandardOpenOption.WRITE);
      Files.move(unfinished.file(), target);
      flushFolder(OwnerOnly.folderOf(target));
      return copied;
    }
  }

  private Examination copy(Requirement requirement, Path unfinished) {
    try (Connection connection = source.open()) {
      requirement.check(connection);
      Examination found = Examination.of(connection, Long.MAX_VALUE, () -> false);
      if (!found.soundness().isSound()) {
        throw ofSource.damaged(found.soundness());
      }
      source.copy(connection, unfinished, ofTarget);
      return found;
    } catch (SQLException failure) {
      throw ofSource.worded(failure);
    }
  }

  /** Reads the copy back; it may have gone on since the original was read, but not otherwise. */
  private Soundness compared(Examination original, Path unfinished) {
    try (Connection connection = DatabaseFile.connect(unfinished)) {
      DatabaseFile.setBackup(connection, true);
      Examination copied =
          Examination.of(connection, original.soundness().lastChange(), () -> false);
      boolean same = copied.digest().equals(original.digest());
      if (!copied.soundness().isSound() || !same) {
        throw ofTarget.unusable(
            "file-unusable",
            "What was written there does not read back as it was. "
                + (same ? copied.soundness().told() : "Records differ.")
                + " Check that disk, and write to another.");
      }
      return copied.soundness();
    } catch (SQLException failure) {
      throw ofTarget.worded(failure);
    }
  }

  private static void flush(Path path, StandardOpenOption how) throws IOException {
    try (FileChannel channel = FileChannel.open(path, how)) {
      channel.force(true);
    }
  }

  /** The new name itself; not every system lets a folder be flushed, and then it looks after it. */
  static void flushFolder(Path folder) {
    try {
      flush(folder, StandardOpenOption.READ);
    } catch (IOException unsupported) {
      return;
    }
  }
}
