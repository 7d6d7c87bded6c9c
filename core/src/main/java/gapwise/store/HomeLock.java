package gapwise.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.Optional;

/**
 * Says of a home that somebody has it open. Any number of processes may, each once; who needs a
 * home alone gets it while nobody has. The operating system drops the lock when the process ends,
 * however it ends; the empty file stays.
 *
 * <p>Two places of the file are locked: the first for as long as a home is open, the second for the
 * moment of opening, so that two processes never make or mend one home at the same time.
 */
final class HomeLock implements AutoCloseable {
  static final String FILE = "gapwise.lock";

  private static final long OPEN = 0;
  private static final long OPENING = 1;
  private static final long ONE_PLACE = 1;

  /** Works that one process at a time does have their places behind those. */
  private static final long FIRST_OF_WORKS = 1000;

  private final FileChannel channel;

  private HomeLock(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * The lock of one among others on a home, made if it is not there.
   *
   * @throws StoreUnusableException when somebody has the home alone, this process has it open
   *     already, or it cannot be used
   */
  static HomeLock amongOthers(StoreFailures failures) {
    try {
      return of(failures.home(), ONE_PLACE, true).orElseThrow(failures::heldAlone);
    } catch (IOException unusable) {
      throw failures.homeUnusable(unusable);
    }
  }

  /** The lock of the only one on a home; empty when anybody has it open. */
  static Optional<HomeLock> alone(Path home) throws IOException {
    return of(home, Long.MAX_VALUE, false);
  }

  private static Optional<HomeLock> of(Path home, long places, boolean shared) throws IOException {
    OwnerOnly.folders(home);
    FileChannel channel =
        OwnerOnly.open(
            home.resolve(FILE),
            StandardOpenOption.CREATE,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE);
    try {
      FileLock lock = channel.tryLock(OPEN, places, shared);
      if (lock != null) {
        return Optional.of(new HomeLock(channel));
      }
    } catch (OverlappingFileLockException sameProcess) {
      channel.close();
      return Optional.empty();
    } catch (IOException unlockable) {
      channel.close();
      throw unlockable;
    }
    channel.close();
    return Optional.empty();
  }

  /** Waits until no other process is opening the home, and keeps others from it until closed. */
  private FileLock opening() throws IOException {
    return channel.lock(OPENING, ONE_PLACE, false);
  }

  /** What is done while no other process opens the home. */
  @FunctionalInterface
  interface Opening<T> {
    T open() throws IOException, SQLException;
  }

  /** Does it, and lets go of the home where it fails. */
  <T> T whileOpening(StoreFailures failures, Opening<T> work) {
    try (FileLock opening = opening()) {
      return work.open();
    } catch (IOException unusable) {
      throw released(failures.homeUnusable(unusable));
    } catch (SQLException failure) {
      throw released(failures.worded(failure));
    } catch (RuntimeException failure) {
      throw released(failure);
    }
  }

  private RuntimeException released(RuntimeException failure) {
    try {
      close();
    } catch (IOException unclosed) {
      failure.addSuppressed(unclosed);
    }
    return failure;
  }

  /** Takes some work for this process alone until closed; empty where another is at it. */
  Optional<FileLock> tryAlone(String work) throws IOException {
    try {
      long place = FIRST_OF_WORKS + (work.hashCode() & 0xFFFF);
      return Optional.ofNullable(channel.tryLock(place, ONE_PLACE, false));
    } catch (OverlappingFileLockException sameProcess) {
      return Optional.empty();
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
