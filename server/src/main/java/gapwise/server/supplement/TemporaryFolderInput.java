package gapwise.server.supplement;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The bytes of the one file of a temporary folder, which goes when they were read or left. */
final class TemporaryFolderInput extends FilterInputStream {
  private final Path folder;

  /**
   * @param source the file, which is deleted when it is closed
   */
  TemporaryFolderInput(InputStream source, Path folder) {
    super(source);
    this.folder = folder;
  }

  @Override
  public void close() throws IOException {
    super.close();
    Files.deleteIfExists(folder);
  }
}
