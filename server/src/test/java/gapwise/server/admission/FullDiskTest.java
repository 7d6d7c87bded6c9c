package gapwise.server.admission;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

class FullDiskTest {
  /** Linux has a device that is always full; what is written to it fails as on a full disk. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aDiskWithoutRoomIsKnownWhereverItShows() {
    IOException full =
        assertThrows(
            IOException.class,
            () -> {
              try (OutputStream device = Files.newOutputStream(Path.of("/dev/full"))) {
                new ByteArrayInputStream(new byte[10]).transferTo(device);
              }
            });
    assertTrue(FullDisk.causes(full));
    assertTrue(
        FullDisk.causes(new IllegalStateException("import", new UncheckedIOException(full))));
  }

  @Test
  void aStoreWithoutRoomIsAFullDiskToo() {
    assertTrue(
        FullDisk.causes(
            new IllegalStateException(
                "[SQLITE_FULL] Insertion failed (database or disk is full)")));
  }

  @Test
  void whatElseFailsIsNotCalledAFullDisk() {
    assertFalse(FullDisk.causes(new IOException("Permission denied")));
    assertFalse(FullDisk.causes(new IllegalStateException()));
  }
}
