package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreConcurrencyTest {
  private static final int THREADS = 6;
  private static final int WRITES_EACH = 60;

  @TempDir Path home;

  /** Where the records of one test are. */
  StorePlace newPlace(Path folder) {
    return StorePlace.of(folder);
  }

  @Test
  void manyWritersAndReadersAtOnceLeaveALogWithoutGaps() throws Exception {
    List<Long> heard = new ArrayList<>();
    try (DocumentStore store =
        DocumentStore.open(newPlace(home), Clock.systemUTC(), Expected.ANYTHING)) {
      // Not synchronised on purpose: listeners are promised one call at a time.
      store.onWrite(written -> heard.add(written.lastChange()));
      List<Callable<Long>> work = new ArrayList<>();
      for (int thread = 0; thread < THREADS; thread++) {
        String who = "writer-" + thread;
        work.add(() -> writeAlone(store, who));
        work.add(() -> readAlong(store));
      }
      inParallel(work);

      List<Long> changes = new ArrayList<>();
      store.changesAfter(0, version -> changes.add(version.change()));
      List<Long> expected = LongStream.rangeClosed(1, THREADS * WRITES_EACH * 2L).boxed().toList();
      assertEquals(expected, changes);
      assertEquals(expected.stream().filter(change -> change % 2 == 0).toList(), heard);
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
    }
  }

  @Test
  void ofEditsOfOneVersionAtOnceExactlyOneIsTaken() throws Exception {
    try (DocumentStore store =
        DocumentStore.open(newPlace(home), Clock.systemUTC(), Expected.ANYTHING)) {
      for (int round = 0; round < 20; round++) {
        int seen = round;
        List<Callable<Long>> work = new ArrayList<>();
        for (int thread = 0; thread < THREADS; thread++) {
          String json = "{\"by\":" + thread + "}";
          List<Write> edit = List.of(Write.put("study", "A", json).expecting(seen));
          work.add(() -> store.write(edit, "ann", "edit").written().isPresent() ? 1L : 0L);
        }
        assertEquals(1, inParallel(work).stream().mapToLong(Long::longValue).sum());
        assertEquals(round + 1, store.latest("study", "A").orElseThrow().version());
      }
    }
  }

  private static long writeAlone(DocumentStore store, String who) {
    for (int number = 0; number < WRITES_EACH; number++) {
      WriteAnswer answer =
          store.write(
              List.of(
                  Write.put("study", "shared", "{}"),
                  Write.put("study", who, "{\"n\":" + number + "}").expecting(number)),
              who,
              "test");
      assertEquals(List.of(), answer.conflicts());
      // What was answered is seen at once.
      assertEquals(number + 1, store.latest("study", who).orElseThrow().version());
    }
    return store.lastChange();
  }

  private static long readAlong(DocumentStore store) {
    long reached = 0;
    for (int round = 0; round < WRITES_EACH; round++) {
      List<DocumentVersion> changes = new ArrayList<>();
      store.changesAfter(reached, changes::add);
      for (DocumentVersion version : changes) {
        assertEquals(reached + 1, version.change());
        reached = version.change();
      }
      // Both writes of a pair are there or neither.
      assertEquals(0, reached % 2);
    }
    return reached;
  }

  private static List<Long> inParallel(List<Callable<Long>> work) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(work.size());
    try {
      List<Long> results = new ArrayList<>();
      for (Future<Long> done : threads.invokeAll(work)) {
        results.add(done.get());
      }
      return results;
    } finally {
      threads.shutdown();
    }
  }
}
