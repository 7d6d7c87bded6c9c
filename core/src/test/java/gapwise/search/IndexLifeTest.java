package gapwise.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import gapwise.store.WriteAnswer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The index against its store over openings, damage and changes; the studies are invented. */
class IndexLifeTest {
  @TempDir Path home;
  private final List<String> messages = new ArrayList<>();
  private final InventedStudies invented = new InventedStudies(11);
  private DocumentStore store;
  private Path index;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home.resolve("store"), Clock.systemUTC());
    index = home.resolve("index");
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aWriteIsShownWhenItIsAnswered() {
    try (StudyIndex search = search()) {
      assertEquals(0, studies(search));
      assertEquals(List.of(), messages);
      put(1, 2);
      assertEquals(2, studies(search));
      assertEquals(store.lastChange(), search.shown().change());
      store.write(List.of(Write.delete("study", "invented-1")), "tester", "not wanted");
      assertEquals(1, studies(search));
    }
  }

  @Test
  void anIndexThatIsSoundIsGoneOnWithAndCatchesUp() {
    put(1, 2, 3);
    search().close();
    messages.clear();
    put(4, 5);
    store.write(List.of(Write.delete("study", "invented-2")), "tester", "not wanted");
    store.write(List.of(Write.put("saved-plan", "p", "{}")), "tester", "another kind");
    try (StudyIndex search = search()) {
      assertEquals(List.of(), messages);
      assertEquals(4, studies(search));
      assertEquals(store.lastChange(), search.shown().change());
    }
  }

  @Test
  void aDeletedIndexIsBuiltAnew() throws IOException {
    put(1, 2, 3);
    search().close();
    try (Stream<Path> files = Files.list(index)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    assertRebuilt(3);
  }

  @Test
  void anIndexWithAnyDamagedFileIsBuiltAnew() throws IOException {
    put(IntStream.rangeClosed(1, 30).toArray());
    search().close();
    int damaged = 0;
    // A rebuilt index has files of other names, so they are damaged by their place in the list.
    for (int place = 0; place < names().size(); place++) {
      Path file = index.resolve(names().get(place));
      byte[] bytes = Files.readAllBytes(file);
      if (bytes.length > 0) {
        bytes[bytes.length / 2] ^= 0x55;
        Files.write(file, bytes);
        assertRebuilt(30);
        damaged++;
      }
    }
    assertTrue(damaged > 2, "an index has several files");
  }

  @Test
  void anIndexWithACutFileIsBuiltAnew() throws IOException {
    put(1, 2, 3);
    search().close();
    for (String name : names()) {
      if (Files.size(index.resolve(name)) > 0) {
        Files.write(index.resolve(name), new byte[] {1, 2, 3});
      }
    }
    assertRebuilt(3);
  }

  @Test
  void anIndexOfAnotherFormatIsBuiltAnew() throws IOException {
    put(1, 2);
    Files.createDirectories(index);
    try (FSDirectory folder = FSDirectory.open(index);
        IndexWriter writer = new IndexWriter(folder, new IndexWriterConfig())) {
      writer.setLiveCommitData(Map.of("format", "0", "change", "2").entrySet());
      writer.commit();
    }
    assertRebuilt(2);
  }

  @Test
  void anIndexOfAnotherStoreIsBuiltAnewEvenWithTheSameNumberOfChanges() {
    put(1, 2);
    search().close();
    store.close();
    store = DocumentStore.open(home.resolve("other"), Clock.systemUTC());
    put(7, 8, 9);
    assertRebuilt(3);
  }

  @Test
  void anIndexAheadOfAnOlderStoreIsBuiltAnew() {
    put(1, 2, 3);
    search().close();
    store.close();
    store = DocumentStore.open(home.resolve("older"), Clock.systemUTC());
    put(1);
    assertRebuilt(1);
  }

  @Test
  void rebuildingOnRequestChangesNoAnswer() {
    put(IntStream.rangeClosed(1, 20).toArray());
    try (StudyIndex search = search()) {
      SearchAnswer before = everything(search.shown());
      search.rebuild();
      assertEquals(before, everything(search.shown()));
      put(21);
      assertEquals(21, studies(search));
    }
  }

  @Test
  void aDocumentThatIsNoStudyIsReportedAndTheOthersAreFound() {
    put(1);
    store.write(
        List.of(Write.put("study", "torn", "{\"id\":\"torn\"}")), "tester", "of a later version");
    try (StudyIndex search = search()) {
      assertEquals(1, studies(search));
      assertTrue(messages.get(0).contains("torn"), messages::toString);
      assertEquals(store.lastChange(), search.shown().change());
    }
  }

  @Test
  void aSecondProgramOnTheSameIndexIsRefusedAndDamagesNothing() {
    put(1, 2);
    try (StudyIndex search = search()) {
      UncheckedIOException refused = assertThrows(UncheckedIOException.class, this::search);
      assertTrue(refused.getMessage().contains("in use"), refused::getMessage);
      put(3);
      assertEquals(3, studies(search));
    }
  }

  @Test
  void aClosedIndexDoesNotStandInTheWayOfWrites() {
    search().close();
    put(1, 2);
    try (StudyIndex search = search()) {
      assertEquals(2, studies(search));
    }
  }

  @Test
  void aStateThatIsHeldAnswersTheSameWhateverIsWrittenAfterIt() {
    put(1, 2);
    try (StudyIndex search = search()) {
      SearchSnapshot held = search.shown();
      assertTrue(held.retain());
      SearchAnswer before = everything(held);
      put(3, 4, 5);
      search.rebuild();
      assertEquals(before, everything(held));
      assertEquals(2, held.change());
      assertEquals(5, studies(search));
      held.release();
      assertFalse(held.retain(), "nobody holds it any more, so its files are closed");
    }
  }

  @Test
  void eachStateIsShownWithItsOwnNumberBeforeTheWriteIsAnswered() {
    List<List<Long>> shown = new ArrayList<>();
    try (StudyIndex search =
        StudyIndex.open(
            index,
            store,
            IndexedKinds.of("study"),
            messages::add,
            snapshot ->
                shown.add(List.of(snapshot.change(), (long) everything(snapshot).studies())))) {
      put(1, 2);
      store.write(List.of(Write.put("import", "i", "{}")), "tester", "another kind");
      put(3);
    }
    assertEquals(
        List.of(List.of(0L, 0L), List.of(2L, 2L), List.of(3L, 2L), List.of(4L, 3L)),
        shown.stream().distinct().toList());
  }

  @Test
  void anIndexFolderThatGoesAwayUnderARunningProgramIsBuiltAnewWithTheNextWrite()
      throws IOException {
    put(1, 2);
    try (StudyIndex search = search()) {
      messages.clear();
      deleteIndex();
      put(3);
      assertEquals(3, studies(search));
      assertEquals(Optional.empty(), search.behind());
      put(4);
      assertEquals(4, studies(search));
    }
    try (StudyIndex search = search()) {
      assertEquals(4, studies(search));
    }
  }

  @Test
  void anIndexThatCannotFollowShowsItsLastStateSaysSoAndFollowsAgainWithoutANewStart()
      throws IOException {
    put(1, 2);
    try (StudyIndex search = search()) {
      messages.clear();
      deleteIndex();
      // A file where the folder should be: nothing can be written there, as on a full disk.
      Files.writeString(index, "in the way");
      WriteAnswer answer =
          store.write(
              List.of(Write.put("study", "invented-3", study(3))), "tester", "stored all the same");
      assertTrue(answer.written().isPresent());
      assertEquals(2, studies(search));
      assertEquals(2, search.shown().change());
      assertTrue(search.behind().isPresent());
      put(4);
      assertEquals(2, studies(search));
      assertEquals(
          1, messages.stream().filter(m -> m.contains("cannot follow")).count(), "told once");
      Files.delete(index);
      search.catchUp();
      assertEquals(Optional.empty(), search.behind());
      assertEquals(store.lastChange(), search.shown().change());
      assertTrue(messages.get(messages.size() - 1).contains("all records again"));
    }
  }

  @Test
  void anIndexThatIsBehindTriesAgainByItself() throws Exception {
    put(1);
    BlockingQueue<Long> shown = new LinkedBlockingQueue<>();
    try (StudyIndex search =
        StudyIndex.open(
            index,
            store,
            IndexedKinds.of("study"),
            messages::add,
            snapshot -> shown.add(snapshot.change()))) {
      deleteIndex();
      Files.writeString(index, "in the way");
      put(2);
      assertTrue(search.behind().isPresent());
      shown.clear();
      Files.delete(index);
      assertEquals(2, shown.poll(60, TimeUnit.SECONDS));
    }
  }

  private void deleteIndex() throws IOException {
    try (Stream<Path> inside = Files.walk(index)) {
      for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  private void assertRebuilt(int studies) {
    messages.clear();
    try (StudyIndex search = search()) {
      assertEquals(studies, studies(search));
      assertEquals(1, messages.size(), messages::toString);
      assertTrue(messages.get(0).contains("built anew"), messages::toString);
    }
    messages.clear();
    try (StudyIndex search = search()) {
      assertEquals(List.of(), messages);
      assertEquals(studies, studies(search));
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(index)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private StudyIndex search() {
    return StudyIndex.open(index, store, "study", messages::add);
  }

  private void put(int... numbers) {
    List<Write> writes = new ArrayList<>();
    for (int number : numbers) {
      Study study = invented.study(number);
      writes.add(Write.put("study", study.id(), EvidenceJson.write(study)));
    }
    store.write(writes, "tester", "invented studies");
  }

  private String study(int number) {
    return EvidenceJson.write(invented.study(number));
  }

  private static int studies(StudyIndex search) {
    return everything(search.shown()).studies();
  }

  private static SearchAnswer everything(StudySearch search) {
    return search.search(SearchRequest.EVERYTHING, StudySearch.Order.TITLE, 0, 1000);
  }
}
