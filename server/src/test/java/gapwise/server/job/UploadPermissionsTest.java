package gapwise.server.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import gapwise.server.home.Home;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is uploaded lies on the disk for a while, for nobody else to read. */
class UploadPermissionsTest {
  @TempDir private Path folder;

  @Test
  void anUploadIsItsOwnersAloneWhileItIsRead() throws Exception {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    Path uploads = folder.resolve("home/uploads");
    List<String> seen = new ArrayList<>();
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs = new ImportJobs(home.base(), uploads)) {
      InputStream second =
          new ByteArrayInputStream("study_id\n".getBytes(StandardCharsets.UTF_8)) {
            @Override
            public synchronized int read(byte[] bytes, int from, int length) {
              // The first file is whole by now and this one has been made.
              seen.addAll(permissions(uploads));
              return super.read(bytes, from, length);
            }

            @Override
            public byte[] readAllBytes() {
              seen.addAll(permissions(uploads));
              return super.readAllBytes();
            }

            @Override
            public long transferTo(java.io.OutputStream target) throws IOException {
              seen.addAll(permissions(uploads));
              return super.transferTo(target);
            }
          };
      jobs.start(
          List.of(
              new ImportJobs.Upload("studies.csv", 1, new ByteArrayInputStream(new byte[] {1})),
              new ImportJobs.Upload("arms.csv", 1, second)),
          "tester",
          ImportJob.Agreed.NOTHING);
    }
    // The folder of uploads, that of this one, and two files.
    assertEquals(List.of("rwx------", "rwx------", "rw-------", "rw-------"), seen.subList(0, 4));
  }

  private static List<String> permissions(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      List<String> found = new ArrayList<>();
      for (Path file : files.toList()) {
        found.add(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
      }
      return found;
    } catch (IOException failure) {
      throw new java.io.UncheckedIOException(failure);
    }
  }
}
