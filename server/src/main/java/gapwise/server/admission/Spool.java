package gapwise.server.admission;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The disk that bodies take while they come in. A file has no name for longer than it is open, so
 * that nothing is left behind when the server is killed. Safe for use by many threads.
 */
final class Spool {
  private final Path folder;
  private final long mostBytes;
  private final AtomicLong taken = new AtomicLong();

  /**
   * @param folder that is there and that others may not read
   * @param mostBytes of all bodies together
   */
  Spool(Path folder, long mostBytes) {
    this.folder = folder;
    this.mostBytes = mostBytes;
  }

  FileChannel open() throws IOException {
    return FileChannel.open(
        folder.resolve(UUID.randomUUID() + ".part"),
        StandardOpenOption.CREATE_NEW,
        StandardOpenOption.READ,
        StandardOpenOption.WRITE,
        StandardOpenOption.DELETE_ON_CLOSE);
  }

  /** Takes room for so many bytes more; false where there is none. */
  boolean take(long bytes) {
    if (taken.addAndGet(bytes) <= mostBytes) {
      return true;
    }
    taken.addAndGet(-bytes);
    return false;
  }

  void giveBack(long bytes) {
    taken.addAndGet(-bytes);
  }
}
