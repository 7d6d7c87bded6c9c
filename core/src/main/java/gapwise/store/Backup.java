package gapwise.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jdbi.v3.core.Handle;

/** A copy of the database in one file, of one moment, while others read and write on. */
final class Backup {
  private Backup() {}

  /** The file appears under its name only when it is whole and on the disk. */
  static void write(Handle handle, Path target) throws IOException {
    Path absolute = target.toAbsolutePath();
    if (Files.exists(absolute)) {
      throw new FileAlreadyExistsException(target.toString());
    }
    Path folder = absolute.getParent();
    Files.createDirectories(folder);
    Path unfinished = Files.createTempFile(folder, "backup", ".unfinished");
    try {
      handle.createUpdate("VACUUM INTO :file").bind("file", unfinished.toString()).execute();
      try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(unfinished, absolute);
    } finally {
      Files.deleteIfExists(unfinished);
    }
  }
}
