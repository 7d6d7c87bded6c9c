package gapwise.server.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.admission.BusyException;
import gapwise.server.home.Home;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class UploadsTest {
  @TempDir Path folder;

  private static List<Path> inside(Path folder) throws IOException {
    try (Stream<Path> paths = Files.list(folder)) {
      return paths.toList();
    }
  }

  @Test
  void whatAKilledServerLeftIsGoneAtTheStartAndOthersMayNotLookIn() throws IOException {
    Path uploads = folder.resolve("uploads");
    Files.createDirectories(uploads.resolve("some-job"));
    Files.writeString(uploads.resolve("some-job").resolve("0.upload"), "study_id");
    Files.writeString(uploads.resolve("body.part"), "half");
    Files.createSymbolicLink(
        uploads.resolve("link"), Files.createDirectory(folder.resolve("kept")));
    Files.writeString(folder.resolve("kept").resolve("file"), "stays");
    assertEquals(uploads, UploadFolder.prepared(uploads));
    assertEquals(List.of(), inside(uploads));
    assertTrue(Files.exists(folder.resolve("kept").resolve("file")), "links are not followed");
    assertEquals(
        "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(uploads)));
  }

  /** Two sheets that are right but for a doubt, so that they wait for a person. */
  private static List<ImportJobs.Upload> doubtful() {
    return List.of(
        upload("studies.csv", "study_id,title\r\nQ,B\r\n"),
        upload("arms.csv", "study_id,arm_id,method,patients\r\nQ,A,autograft,12\r\n"),
        upload("outcomes.csv", "study_id,arm_id,outcome,events,total\r\nQ,A,union,10,12\r\n"));
  }

  private static ImportJobs.Upload upload(String name, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new ImportJobs.Upload(name, bytes.length, new ByteArrayInputStream(bytes));
  }

  private static long size(List<ImportJobs.Upload> uploads) {
    return uploads.stream().mapToLong(ImportJobs.Upload::size).sum();
  }

  @Test
  void uploadsThatWaitTakeSoMuchOfTheDiskAndTheOldestGoFirst() throws IOException {
    Path uploads = UploadFolder.prepared(folder.resolve("uploads"));
    long one = size(doubtful());
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs = new ImportJobs(home.base(), uploads, 2 * one)) {
      String first = settled(jobs, jobs.start(doubtful(), "tester", ImportJob.Agreed.NOTHING));
      String second = settled(jobs, jobs.start(doubtful(), "tester", ImportJob.Agreed.NOTHING));
      assertEquals(2, inside(uploads).size());
      String third = settled(jobs, jobs.start(doubtful(), "tester", ImportJob.Agreed.NOTHING));
      assertTrue(jobs.find(first).isEmpty(), "the oldest went");
      assertTrue(jobs.find(second).isPresent());
      assertTrue(jobs.find(third).isPresent());
      assertEquals(2, inside(uploads).size());
    }
    assertEquals(List.of(), inside(uploads), "nothing stays after a clean stop");
  }

  @Test
  void anUploadThatHasNoRoomIsToldWhenToComeBackAndLeavesNothing() throws IOException {
    Path uploads = UploadFolder.prepared(folder.resolve("uploads"));
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs = new ImportJobs(home.base(), uploads, size(doubtful()) - 1)) {
      BusyException busy =
          assertThrows(
              BusyException.class,
              () -> jobs.start(doubtful(), "tester", ImportJob.Agreed.NOTHING));
      assertTrue(busy.getMessage().contains("try again"), busy.getMessage());
      assertTrue(busy.seconds() > 0);
      assertEquals(List.of(), inside(uploads));
    }
  }

  /** Waits until a job waits for a person itself; gives its name. */
  private static String settled(ImportJobs jobs, ImportJob job) {
    while (!(jobs.find(job.id()).orElseThrow().state() instanceof ImportState.Asking)) {
      Thread.onSpinWait();
    }
    return job.id();
  }
}
