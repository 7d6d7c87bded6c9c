package gapwise.table;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/**
 * The old container format: workbooks of before 2007, and today's when they are locked with a
 * password. Neither is read; the person is told which it is.
 */
final class CompoundFile {
  /** A locked workbook larger than this is called an old one rather than loaded. */
  private static final int MOST_BYTES = 64 * 1024 * 1024;

  private CompoundFile() {}

  static void explain(TableFile file, FileReading reading) throws IOException {
    if (isLocked(file)) {
      reading.problem(
          file.name(),
          "password-protected",
          "The workbook is locked with a password. Save it without one and try again.");
    } else {
      reading.problem(
          file.name(),
          "old-workbook",
          "The file is in a format of before 2007 or is damaged. Save it as .xlsx and try again.");
    }
  }

  private static boolean isLocked(TableFile file) throws IOException {
    byte[] content;
    try (InputStream bytes = file.opening().open()) {
      content = bytes.readNBytes(MOST_BYTES);
    }
    try (POIFSFileSystem container = new POIFSFileSystem(new ByteArrayInputStream(content))) {
      return container.getRoot().hasEntryCaseInsensitive(Decryptor.DEFAULT_POIFS_ENTRY);
    } catch (IOException | RuntimeException damaged) {
      return false;
    }
  }
}
