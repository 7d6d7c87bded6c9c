package gapwise.server.job.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.ReferenceBase;
import gapwise.server.admission.BusyException;
import gapwise.server.job.ImportJobs.Upload;
import gapwise.server.job.UploadFolder;
import gapwise.store.DocumentStore;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** How many loads of references are kept, and what stays of them on the disk. */
@Timeout(60)
class ReferenceJobsTest {
  /** As many as are remembered; from the class, no source. */
  private static final int MOST = 20;

  @TempDir Path folder;
  private DocumentStore store;
  private ReferenceBase kept;

  @BeforeEach
  void open() {
    store = DocumentStore.open(folder.resolve("home"), Clock.systemUTC());
    kept = new ReferenceBase(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static List<Upload> upload() {
    byte[] bytes =
        "TY  - JOUR\nTI  - Wax for shins\nPY  - 2001\nER  - \n".getBytes(StandardCharsets.UTF_8);
    return List.of(new Upload("wax.ris", bytes.length, new ByteArrayInputStream(bytes)));
  }

  private static ReferenceState settled(ReferenceJobs jobs, ReferenceJob job) {
    while (!jobs.find(job.id()).orElseThrow().state().isSettled()) {
      Thread.onSpinWait();
    }
    return jobs.find(job.id()).orElseThrow().state();
  }

  private long folders() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("uploads"))) {
      return all.count();
    }
  }

  private Path uploads() {
    return UploadFolder.prepared(folder.resolve("uploads"));
  }

  @Test
  void newerLoadsPushTheOldestOutWithItsFiles() throws IOException {
    List<ReferenceJob> all = new ArrayList<>();
    try (ReferenceJobs jobs = new ReferenceJobs(Map::of, kept, uploads())) {
      for (int i = 0; i <= MOST; i++) {
        ReferenceJob job = jobs.start(upload(), Optional.empty());
        assertTrue(settled(jobs, job) instanceof ReferenceState.Done);
        all.add(job);
      }
      assertTrue(jobs.find(all.get(0).id()).isEmpty());
      assertTrue(jobs.open(all.get(0).id(), ReferenceFileOut.RIS).isEmpty());
      assertFalse(Files.exists(all.get(0).folder()));
      assertTrue(jobs.find(all.get(1).id()).isPresent());
      assertEquals(MOST, folders());
    }
    assertEquals(0, folders(), "nothing stays when the server stops");
  }

  @Test
  void whatWaitsIsNotPushedOutAndOneMoreIsAskedToComeAgain() throws IOException {
    CountDownLatch gate = new CountDownLatch(1);
    try (ReferenceJobs jobs =
        new ReferenceJobs(
            () -> {
              try {
                gate.await();
              } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
              }
              return Map.of();
            },
            kept,
            uploads())) {
      ReferenceJob first = jobs.start(upload(), Optional.empty());
      for (int i = 1; i < MOST; i++) {
        jobs.start(upload(), Optional.empty());
      }
      assertThrows(BusyException.class, () -> jobs.start(upload(), Optional.empty()));
      gate.countDown();
      assertTrue(settled(jobs, first) instanceof ReferenceState.Done);
    }
  }

  @Test
  void aBaseThatCannotBeReadEndsTheLoadInWords() throws IOException {
    try (ReferenceJobs jobs =
        new ReferenceJobs(
            () -> {
              throw new IllegalStateException("made to fail");
            },
            kept,
            uploads())) {
      ReferenceJob job = jobs.start(upload(), Optional.empty());
      ReferenceState.Failed failed = (ReferenceState.Failed) settled(jobs, job);
      assertTrue(failed.message().contains("Hand the files in again"), failed.message());
      assertFalse(Files.exists(job.folder()));
    }
  }

  @Test
  void whatIsAcceptedIsKeptOnceAndNothingBefore() throws IOException {
    try (ReferenceJobs jobs = new ReferenceJobs(Map::of, kept, uploads())) {
      ReferenceJob job = jobs.start(upload(), Optional.empty());
      settled(jobs, job);
      assertEquals(0, store.lastChange());
      assertTrue(jobs.keep(job.id(), List.of(), "AB"));
      ReferenceState.Kept state = (ReferenceState.Kept) settled(jobs, job);
      assertEquals(1, state.loads().get(0).added());
      assertFalse(jobs.keep(job.id(), List.of(), "AB"));
      assertTrue(jobs.open(job.id(), ReferenceFileOut.RIS).isPresent());
      long change = store.lastChange();
      ReferenceJob again = jobs.start(upload(), Optional.empty());
      settled(jobs, again);
      assertTrue(jobs.keep(again.id(), List.of(), "AB"));
      assertEquals(1, ((ReferenceState.Kept) settled(jobs, again)).loads().get(0).known());
      assertEquals(change, store.lastChange());
      assertFalse(jobs.keep("none", List.of(), "AB"));
    }
  }
}
