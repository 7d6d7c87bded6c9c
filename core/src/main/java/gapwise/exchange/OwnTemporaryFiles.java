package gapwise.exchange;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import org.apache.poi.util.TempFile;
import org.apache.poi.util.TempFileCreationStrategy;

/**
 * Where the library keeps the sheets of a large workbook while it is written: files that their
 * owner alone can read. By itself it shares one folder between all users of a machine, of which the
 * first shuts the others out.
 */
final class OwnTemporaryFiles implements TempFileCreationStrategy {
  private OwnTemporaryFiles() {}

  /** Has the library use them in the whole program. */
  static void use() {
    TempFile.setTempFileCreationStrategy(new OwnTemporaryFiles());
  }

  @Override
  public File createTempFile(String prefix, String suffix) throws IOException {
    return Files.createTempFile(prefix, suffix).toFile();
  }

  @Override
  public File createTempDirectory(String prefix) throws IOException {
    return Files.createTempDirectory(prefix).toFile();
  }
}
