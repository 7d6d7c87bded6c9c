package gapwise.server.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Home;
import gapwise.server.testing.DamagedDatabase;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What page and API share: imports are compared with all that stands in the evidence base. */
@Timeout(60)
class ImportDoorsTest {
  @TempDir Path folder;

  private static List<ImportJobs.Upload> study(String id, String title, String doi) {
    return List.of(
        upload("studies.csv", "study_id,title,doi\r\n" + id + "," + title + "," + doi + "\r\n"),
        upload("arms.csv", "study_id,arm_id,method\r\n" + id + ",A,autograft\r\n"));
  }

  private static ImportJobs.Upload upload(String name, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new ImportJobs.Upload(name, bytes.length, new ByteArrayInputStream(bytes));
  }

  private static ImportState settled(ImportJobs jobs, ImportJob job) {
    while (!jobs.find(job.id()).orElseThrow().state().isSettled()) {
      Thread.onSpinWait();
    }
    return jobs.find(job.id()).orElseThrow().state();
  }

  private ImportJobs jobs(Home home) {
    return new ImportJobs(home.base(), UploadFolder.prepared(folder.resolve("uploads")));
  }

  @Test
  void anImportHandedInWhileAnotherRunsIsComparedWithIt() throws IOException {
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs = jobs(home)) {
      ImportJob first =
          jobs.start(study("first", "One", "10.1000/abc"), "tester", ImportJob.Agreed.NOTHING);
      ImportJob second =
          jobs.start(study("second", "Two", "10.1000/ABC"), "tester", ImportJob.Agreed.NOTHING);
      assertTrue(settled(jobs, first) instanceof ImportState.Done);
      ImportState.Asking asked = (ImportState.Asking) settled(jobs, second);
      assertEquals("same-paper-twice", asked.kinds().get(0).code());
      String key = asked.open().get(0).key();
      ImportJob again = jobs.agree(second.id(), agreed(Set.of(key), Set.of())).orElseThrow();
      assertTrue(settled(jobs, again) instanceof ImportState.Done);
      ImportJob corrected =
          jobs.start(study("second", "New", "10.1000/ABC"), "tester", ImportJob.Agreed.NOTHING);
      ImportState.Asking change = (ImportState.Asking) settled(jobs, corrected);
      assertEquals(List.of(), change.open(), "what was acknowledged is not asked again");
      String changed = change.changes().get(0).key();
      ImportState.Done done =
          (ImportState.Done)
              settled(
                  jobs,
                  jobs.agree(corrected.id(), agreed(Set.of(), Set.of(changed))).orElseThrow());
      assertEquals(List.of("second"), done.compared().changed());
    }
  }

  private static ImportJob.Agreed agreed(Set<String> doubts, Set<String> changes) {
    return new ImportJob.Agreed(doubts, changes, Set.of());
  }

  @Test
  void whatIsAgreedToInSeveralGoesIsAskedOnce() throws IOException {
    List<ImportJobs.Upload> files =
        List.of(
            upload("studies.csv", "study_id,title\r\na,One\r\nb,Two\r\n"),
            upload(
                "arms.csv",
                "study_id,arm_id,method,age_mean\r\na,A,autograft,12\r\nb,A,autograft,11\r\n"));
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs = jobs(home)) {
      ImportJob job = jobs.start(files, "tester", ImportJob.Agreed.NOTHING);
      ImportState.Asking both = (ImportState.Asking) settled(jobs, job);
      assertEquals(2, both.open().size());
      jobs.agree(job.id(), agreed(Set.of(both.open().get(0).key()), Set.of()));
      ImportState.Asking one = (ImportState.Asking) settled(jobs, job);
      assertEquals(1, one.open().size(), "the first is not asked again");
      jobs.agree(job.id(), agreed(Set.of(one.open().get(0).key()), Set.of()));
      assertTrue(settled(jobs, job) instanceof ImportState.Done);
    }
  }

  @Test
  void aDamagedRecordDoesNotStopTheImportThatMendsItNorThatOfAnother() throws IOException {
    Path kept = folder.resolve("home");
    try (Home home = Home.open(kept, Clock.systemUTC());
        ImportJobs jobs = jobs(home)) {
      settled(
          jobs,
          jobs.start(
              study("first", "Rarely told", "10.1000/abc"), "tester", ImportJob.Agreed.NOTHING));
    }
    DamagedDatabase.changeLetterIn(kept, "Rarely told");
    try (Home home = Home.open(kept, Clock.systemUTC());
        ImportJobs jobs = jobs(home)) {
      ImportJob other =
          jobs.start(study("second", "Two", "10.1000/def"), "tester", ImportJob.Agreed.NOTHING);
      assertTrue(settled(jobs, other) instanceof ImportState.Done);
      ImportJob mending =
          jobs.start(
              study("first", "Rarely told", "10.1000/abc"), "tester", ImportJob.Agreed.NOTHING);
      ImportState.Done done = (ImportState.Done) settled(jobs, mending);
      assertEquals(1, done.record().saved());
    }
  }
}
