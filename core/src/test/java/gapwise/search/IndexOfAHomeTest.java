package gapwise.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the folder of an index tells, and to whom; the studies are invented. */
class IndexOfAHomeTest {
  private final InventedStudies invented = new InventedStudies(11);

  @TempDir Path home;

  @Test
  void theFilesOfAnIndexAreTheirOwnersAlone() throws IOException {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    try (DocumentStore store = DocumentStore.open(home, Clock.systemUTC());
        StudyIndex search = open(store)) {
      put(store, 1, 30);
      search.rebuild();
      put(store, 31, 60);
      try (Stream<Path> files = Files.list(home.resolve("index"))) {
        List<Path> all = files.toList();
        assertTrue(all.size() > 3, all::toString);
        for (Path file : all) {
          assertEquals(
              "rw-------",
              PosixFilePermissions.toString(Files.getPosixFilePermissions(file)),
              file.toString());
        }
      }
      assertEquals(
          "rwx------",
          PosixFilePermissions.toString(Files.getPosixFilePermissions(home.resolve("index"))));
    }
  }

  @Test
  void whatSaysNothingOfStudiesMakesNoNewState() {
    List<Long> shown = new ArrayList<>();
    IndexedKinds kinds = new IndexedKinds("study", Set.of("vote"));
    try (DocumentStore store = DocumentStore.open(home, Clock.systemUTC());
        StudyIndex search =
            StudyIndex.open(
                home.resolve("index"),
                store,
                kinds,
                message -> {},
                snapshot -> shown.add(snapshot.change()))) {
      put(store, 1, 2);
      int states = shown.size();
      store.write(List.of(Write.put("vote", "a", "{}")), "a test", "silent");
      assertEquals(states, shown.size());
      store.write(List.of(Write.put("judgement", "a", "{}")), "a test", "not silent");
      assertEquals(states + 1, shown.size());
      store.write(List.of(Write.put("vote", "a", "{ }")), "a test", "silent");
      put(store, 3, 3);
      assertEquals(states + 2, shown.size());
      assertEquals(store.lastChange(), search.shown().change());
    }
  }

  @Test
  void anIndexTellsWhatItHadTakenInWithoutBeingOpened() throws IOException {
    Path index = home.resolve("index");
    assertEquals(0, IndexTrace.lastChange(index));
    try (DocumentStore store = DocumentStore.open(home, Clock.systemUTC());
        StudyIndex search = open(store)) {
      put(store, 1, 7);
    }
    assertEquals(7, IndexTrace.lastChange(index));
    try (Stream<Path> files = Files.list(index)) {
      for (Path file : files.toList()) {
        Files.write(file, new byte[] {1, 2, 3});
      }
    }
    assertEquals(0, IndexTrace.lastChange(index));
  }

  private StudyIndex open(DocumentStore store) {
    return StudyIndex.open(home.resolve("index"), store, "study", message -> {});
  }

  private void put(DocumentStore store, int from, int to) {
    List<Write> writes =
        IntStream.rangeClosed(from, to)
            .mapToObj(invented::study)
            .map((Study study) -> Write.put("study", study.id(), EvidenceJson.write(study)))
            .toList();
    store.write(writes, "tester", "invented studies");
  }
}
