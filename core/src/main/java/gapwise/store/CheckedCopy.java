package gapwise.store;

import gapwise.problem.Problem;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A copy of a database file in one file, of one moment, while others read and write on. The copy
 * appears under its name only when the source was found sound, the copy was read back and found
 * sound and equal to it, and all of it is on the disk.
 */
final class CheckedCopy {
  private final Path source;
  private final StoreFailures ofSource;
  private final StoreFailures ofTarget;

  /**
   * @param named what the source is called in messages: the home it belongs to, or the file itself
   */
  CheckedCopy(Path source, Path named, Path target) {
    this.source = source;
    this.ofSource = new StoreFailures(named);
    this.ofTarget = new StoreFailures(target);
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
    try (Connection connection = DatabaseFile.connect(source)) {
      requirement.check(connection);
      Examination found = Examination.of(connection, Long.MAX_VALUE, () -> false);
      if (!found.soundness().isSound()) {
        throw ofSource.damaged(found.soundness());
      }
      copyInto(connection, unfinished);
      return found;
    } catch (SQLException failure) {
      throw ofSource.worded(failure);
    }
  }

  private void copyInto(Connection connection, Path unfinished) {
    try (PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
      copy.setString(1, unfinished.toString());
      copy.executeUpdate();
    } catch (SQLException failure) {
      throw ofTarget.worded(failure);
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

  /**
   * A file that is being written under a name that says so, such as {@code
   * monday.db.4711-1.unfinished}. What a killed run left under such a name is deleted by the next
   * one that writes into the folder.
   */
  static final class Unfinished implements AutoCloseable {
    private static final Pattern NAME =
        Pattern.compile(".+\\.(\\d{1,18})-\\d{1,18}\\.unfinished(-journal)?");
    private static final AtomicLong COUNT = new AtomicLong();
    private static final Set<Path> BEING_WRITTEN = ConcurrentHashMap.newKeySet();

    private final Path file;

    private Unfinished(Path file) {
      this.file = file;
    }

    /** A new empty file beside the one that it will become. */
    static Unfinished of(Path target) throws IOException {
      Path folder = OwnerOnly.folderOf(target);
      deleteLeftOver(folder);
      Path file =
          folder.resolve(
              "%s.%d-%d.unfinished"
                  .formatted(
                      target.getFileName(),
                      ProcessHandle.current().pid(),
                      COUNT.incrementAndGet()));
      BEING_WRITTEN.add(file);
      OwnerOnly.fileIfAbsent(file);
      return new Unfinished(file);
    }

    private static void deleteLeftOver(Path folder) throws IOException {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : files.toList()) {
          Matcher name = NAME.matcher(file.getFileName().toString());
          if (name.matches()
              && isLeftOver(file, Long.parseLong(name.group(1)))
              && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            Files.deleteIfExists(file);
          }
        }
      }
    }

    /** Numbers of processes come again: one of this run's own number may be of an earlier run. */
    private static boolean isLeftOver(Path file, long process) {
      return process == ProcessHandle.current().pid()
          ? BEING_WRITTEN.stream().noneMatch(own -> file.toString().startsWith(own.toString()))
          : ProcessHandle.of(process).isEmpty();
    }

    Path file() {
      return file;
    }

    /** Deletes it where it has not been moved to its own name. */
    @Override
    public void close() throws IOException {
      Files.deleteIfExists(file);
      Files.deleteIfExists(file.resolveSibling(file.getFileName() + "-journal"));
      BEING_WRITTEN.remove(file);
    }
  }
}
