package gapwise.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * Keeps a second run of the program out of a home. The operating system drops the lock when the
 * process ends, however it ends; the empty file stays.
 */
final class HomeLock implements AutoCloseable {
  static final String FILE = "gapwise.lock";

  private final FileChannel channel;

  private HomeLock(FileChannel channel) {
    this.channel = channel;
  }

  /** The lock on a home, made if it is not there; empty when someone else has it. */
  static Optional<HomeLock> of(Path home) throws IOException {
    OwnerOnly.folders(home);
    FileChannel channel =
        OwnerOnly.open(home.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      FileLock lock = channel.tryLock();
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

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
