package gapwise.datapackage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Iterator;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** An archive (ZIP). Its files are read where they are; none is unpacked. */
final class ZipContainer implements Container {
  /** More than a package of ours has; each costs memory when the archive is opened. */
  private static final int MOST_ENTRIES = 20_000;

  private final ZipFile zip;

  ZipContainer(Path file) throws IOException {
    zip = new ZipFile(file.toFile());
    try {
      requireEachOnce();
    } catch (IOException wrong) {
      zip.close();
      throw wrong;
    }
  }

  /** Of two files of one name, programs differ in which they read. */
  private void requireEachOnce() throws ZipException {
    if (zip.size() > MOST_ENTRIES) {
      throw new ZipException("more than " + MOST_ENTRIES + " files");
    }
    Set<String> names = new HashSet<>();
    for (Iterator<? extends ZipEntry> all = zip.entries().asIterator(); all.hasNext(); ) {
      String name = all.next().getName();
      if (!names.add(name)) {
        throw new ZipException("two files of one name");
      }
    }
  }

  @Override
  public Optional<InputStream> open(String path) throws IOException {
    ZipEntry entry = zip.getEntry(path);
    return entry == null || entry.isDirectory()
        ? Optional.empty()
        : Optional.of(zip.getInputStream(entry));
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}
