package gapwise.datapackage;

import gapwise.store.OwnerOnly;
import java.io.BufferedOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * One new archive (ZIP). Every file in it has the same old date, so that equal files are equal
 * bytes.
 */
final class ZipDestination implements Destination {
  /** The first day that the format can say. */
  private static final LocalDateTime NO_DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final Path target;
  private final Path unfinished;
  private final ZipOutputStream zip;
  private boolean finished;

  ZipDestination(Path target) throws IOException {
    this.target = target.toAbsolutePath();
    this.unfinished = Unfinished.beside(this.target);
    this.zip = new ZipOutputStream(new BufferedOutputStream(OwnerOnly.newFile(unfinished)));
  }

  @Override
  public OutputStream next(String path) throws IOException {
    ZipEntry entry = new ZipEntry(path);
    entry.setTimeLocal(NO_DATE);
    zip.putNextEntry(entry);
    return new FilterOutputStream(zip) {
      @Override
      public void write(byte[] bytes, int from, int length) throws IOException {
        out.write(bytes, from, length);
      }

      @Override
      public void close() throws IOException {
        zip.closeEntry();
      }
    };
  }

  @Override
  public void finish() throws IOException {
    zip.close();
    Files.move(unfinished, target);
    finished = true;
  }

  @Override
  public void close() throws IOException {
    if (!finished) {
      try {
        zip.close();
      } finally {
        Files.deleteIfExists(unfinished);
      }
    }
  }
}
