package gapwise.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.openxml4j.util.ZipFileZipEntrySource;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the library reads as a whole is bounded more tightly than what is streamed. */
class PartsTest {
  private static final String MARKUP = "<a b='0123456789abcdef'/>";
  private static final int TIMES = (int) (Parts.MOST_BYTES_OF_LISTS / MARKUP.length()) + 1;

  @TempDir private Path folder;

  private Path zip(String name) throws IOException {
    Path file = folder.resolve("book.xlsx");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      zip.setLevel(0);
      zip.putNextEntry(new ZipEntry(name));
      zip.write(MARKUP.repeat(TIMES).getBytes(StandardCharsets.UTF_8));
    }
    return file;
  }

  private long read(String name, boolean opened) throws IOException {
    try (ZipSecureFile zip = new ZipSecureFile(zip(name).toFile());
        Parts parts = new Parts(new ZipFileZipEntrySource(zip))) {
      if (opened) {
        parts.opened();
      }
      try (InputStream bytes = parts.getInputStream(parts.getEntry(name))) {
        return bytes.readAllBytes().length;
      }
    }
  }

  @Test
  void whileTheWorkbookIsOpenedNoPartMayBeLarge() {
    assertThrows(Limited.TooLarge.class, () -> read("[Content_Types].xml", false));
    assertThrows(Limited.TooLarge.class, () -> read("docProps/core.xml", false));
  }

  @Test
  void afterwardsSheetsMayBeLargeAndListsOfPartsMayNot() throws IOException {
    assertEquals((long) MARKUP.length() * TIMES, read("xl/sheet1.xml", true));
    assertThrows(Limited.TooLarge.class, () -> read("xl/_rels/workbook.xml.rels", true));
  }
}
