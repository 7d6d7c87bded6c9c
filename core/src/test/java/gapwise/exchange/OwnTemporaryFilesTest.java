package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.apache.poi.util.TempFile;
import org.junit.jupiter.api.Test;

/** Sheets wait on the disk while a workbook is written: for nobody else, in no shared folder. */
class OwnTemporaryFilesTest {
  @Test
  void theyAreTheirOwnersAloneAndLieInNoFolderSharedWithOthers() throws IOException {
    Export.workbook(List.of(), new ByteArrayOutputStream());
    Path file = TempFile.createTempFile("sheet", ".xml").toPath();
    try {
      assertEquals(Path.of(System.getProperty("java.io.tmpdir")), file.getParent());
      assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
      assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    } finally {
      assertTrue(Files.deleteIfExists(file));
    }
  }
}
