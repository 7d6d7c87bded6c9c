package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.util.Enumeration;
import java.util.Locale;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.poi.openxml4j.util.ZipEntrySource;

/**
 * The parts of a packed workbook, each bounded in size and in the length of one piece of markup,
 * whoever reads it: this program, or the library, which reads some parts as a whole.
 */
final class Parts implements ZipEntrySource {
  /** Largest part unpacked: 200,000 rows of 60 columns have some 400 MB, and are streamed. */
  static final long MOST_BYTES = 512L * 1024 * 1024;

  /**
   * Largest part that the library holds in memory: lists of parts and kinds, a few kilobytes in
   * workbooks of people.
   */
  static final long MOST_BYTES_OF_LISTS = 4L * 1024 * 1024;

  private final ZipEntrySource packed;
  private volatile boolean open;

  Parts(ZipEntrySource packed) {
    this.packed = packed;
  }

  /** From here on nothing but lists of parts is read as a whole. */
  void opened() {
    open = true;
  }

  @Override
  public InputStream getInputStream(ZipArchiveEntry entry) throws IOException {
    boolean list = !open || entry.getName().toLowerCase(Locale.ROOT).endsWith(".rels");
    return new MarkupGuard(
        new Limited(packed.getInputStream(entry), list ? MOST_BYTES_OF_LISTS : MOST_BYTES));
  }

  @Override
  public Enumeration<? extends ZipArchiveEntry> getEntries() {
    return packed.getEntries();
  }

  @Override
  public ZipArchiveEntry getEntry(String path) {
    return packed.getEntry(path);
  }

  @Override
  public boolean isClosed() {
    return packed.isClosed();
  }

  @Override
  public void close() throws IOException {
    packed.close();
  }
}
