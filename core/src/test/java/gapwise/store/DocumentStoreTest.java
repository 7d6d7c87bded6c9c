package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentStoreTest {
  private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);

  @TempDir Path home;
  private StorePlace place;
  private DocumentStore store;

  /** Where the records of one test are. */
  StorePlace newPlace(Path folder) {
    return StorePlace.of(folder);
  }

  @BeforeEach
  void open() {
    place = newPlace(home);
    store = DocumentStore.open(place, CLOCK, Expected.ANYTHING);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void everyVersionStaysWithWhoWhenAndWhy() {
    put("study", "A", "{\"n\":1}");
    store.write(List.of(Write.put("study", "A", "{\"n\":2}")), "bo", "typing error");
    DocumentVersion first =
        new DocumentVersion(
            new DocumentId("study", "A"), 1, 1, NOON, "ann", "test", Optional.of("{\"n\":1}"));
    DocumentVersion second =
        new DocumentVersion(
            new DocumentId("study", "A"),
            2,
            2,
            NOON,
            "bo",
            "typing error",
            Optional.of("{\"n\":2}"));
    assertEquals(List.of(first, second), store.history("study", "A"));
    assertEquals(Optional.of(second), store.latest("study", "A"));
    assertEquals(Optional.of(first), store.version("study", "A", 1));
    assertEquals(Optional.empty(), store.version("study", "A", 3));
    assertEquals(2, store.lastChange());
  }

  @Test
  void anEmptyStoreAnswersWithNothing() {
    assertEquals(Optional.empty(), store.latest("study", "A"));
    assertEquals(List.of(), store.history("study", "A"));
    assertEquals(0, store.lastChange());
    assertEquals(List.of(), changesAfter(0));
    assertEquals(new WriteAnswer.Written(0, 0), store.write(List.of(), "ann", "nothing to do"));
  }

  @Test
  void aDeletionIsAVersionAndTheDocumentCanComeBack() {
    put("study", "A", "{}");
    store.write(List.of(Write.delete("study", "A")), "ann", "duplicate");
    assertEquals(Optional.empty(), store.latest("study", "A"));
    assertTrue(store.version("study", "A", 2).orElseThrow().isDeletion());
    assertEquals(List.of(), latestKeys("study"));
    store.write(List.of(Write.put("study", "A", "{}").expecting(2)), "ann", "no duplicate");
    assertEquals(3, store.latest("study", "A").orElseThrow().version());
    assertEquals(3, store.history("study", "A").size());
  }

  @Test
  void anEditOfAnOutdatedVersionIsAConflictAndWritesNothing() {
    put("study", "A", "{\"n\":1}");
    put("study", "A", "{\"n\":2}");
    WriteAnswer answer =
        store.write(
            List.of(Write.put("study", "B", "{}"), Write.put("study", "A", "{}").expecting(1)),
            "bo",
            "late edit");
    assertEquals(
        List.of(new Conflict(new DocumentId("study", "A"), OptionalInt.of(1), 2, false)),
        answer.conflicts());
    assertEquals(Optional.empty(), answer.written());
    assertEquals(Optional.empty(), store.latest("study", "B"));
    assertEquals(2, store.lastChange());
    put("study", "C", "{}");
    assertEquals(3, store.lastChange());
  }

  @Test
  void aDocumentThatMustBeNewConflictsWithOneThatIsThere() {
    Write first = Write.put("study", "A", "{}").expecting(0);
    assertEquals(
        Optional.of(new WriteAnswer.Written(1, 1)),
        store.write(List.of(first), "ann", "new").written());
    assertEquals(1, store.write(List.of(first), "bo", "new").conflicts().get(0).foundVersion());
  }

  @Test
  void deletingWhatIsNotThereIsAConflict() {
    WriteAnswer never = store.write(List.of(Write.delete("study", "A")), "ann", "clean");
    assertEquals(
        List.of(new Conflict(new DocumentId("study", "A"), OptionalInt.empty(), 0, false)),
        never.conflicts());
    put("study", "A", "{}");
    store.write(List.of(Write.delete("study", "A")), "ann", "clean");
    WriteAnswer twice = store.write(List.of(Write.delete("study", "A")), "ann", "clean");
    assertEquals(
        List.of(new Conflict(new DocumentId("study", "A"), OptionalInt.empty(), 2, true)),
        twice.conflicts());
  }

  @Test
  void oneDocumentMayBeWrittenSeveralTimesInOneGo() {
    store.write(
        List.of(
            Write.put("study", "A", "{\"n\":1}"),
            Write.put("study", "A", "{\"n\":2}").expecting(1),
            Write.delete("study", "A"),
            Write.put("study", "A", "{\"n\":4}")),
        "ann",
        "replay");
    assertEquals(4, store.latest("study", "A").orElseThrow().version());
  }

  @Test
  void whatAnIteratorThrowsMidwayComesOutAndNothingIsWritten() {
    put("study", "before", "{}");
    IllegalStateException own = new IllegalStateException("row 57 is wrong");
    Iterator<Write> failing =
        IntStream.range(0, 100)
            .mapToObj(
                number -> {
                  if (number == 57) {
                    throw own;
                  }
                  return Write.put("study", "S" + number, "{}");
                })
            .iterator();
    List<WriteAnswer> heard = new ArrayList<>();
    store.onWrite(heard::add);
    assertSame(
        own,
        assertThrows(IllegalStateException.class, () -> store.writeAll(failing, "ann", "import")));
    assertEquals(List.of("before"), latestKeys("study"));
    assertEquals(List.of(), heard);
    put("study", "after", "{}");
    assertEquals(2, store.lastChange());
  }

  @Test
  void aLargeImportIsOneChangeRangeAndReadersSeeItOnlyWhenItIsDone() {
    List<Long> seenMidway = new ArrayList<>();
    Iterator<Write> many =
        IntStream.range(0, 20_000)
            .mapToObj(
                number -> {
                  if (number == 10_000) {
                    seenMidway.add(store.lastChange());
                  }
                  return Write.put("arm", "arm-%05d".formatted(number), "{\"n\":" + number + "}");
                })
            .iterator();
    WriteAnswer answer = store.writeAll(many, "ann", "import");
    assertEquals(Optional.of(new WriteAnswer.Written(20_000, 20_000)), answer.written());
    assertEquals(1, answer.written().orElseThrow().firstChange());
    assertEquals(List.of(0L), seenMidway);
    assertEquals(20_000, latestKeys("arm").size());
  }

  @Test
  void latestOfAKindComeByKeyAndOnlyAsTheyStand() {
    put("study", "B", "{\"n\":1}");
    put("study", "A", "{}");
    put("study", "B", "{\"n\":2}");
    put("arm", "C", "{}");
    List<DocumentVersion> found = new ArrayList<>();
    store.forEachLatest("study", found::add);
    assertEquals(List.of("A", "B"), found.stream().map(version -> version.id().key()).toList());
    assertEquals(Optional.of("{\"n\":2}"), found.get(1).json());
  }

  @Test
  void changesAfterANumberComeInOrderWithDeletions() {
    put("study", "A", "{}");
    put("arm", "A", "{}");
    store.write(List.of(Write.delete("study", "A")), "ann", "clean");
    List<DocumentVersion> changes = changesAfter(1);
    assertEquals(List.of(2L, 3L), changes.stream().map(DocumentVersion::change).toList());
    assertTrue(changes.get(1).isDeletion());
    assertFalse(changes.get(0).isDeletion());
  }

  @Test
  void aConsumerMayReadAndWriteWhileItIsFed() {
    put("study", "A", "{}");
    put("study", "B", "{}");
    store.forEachLatest(
        "study",
        version -> {
          put("copy", version.id().key(), "{}");
          assertTrue(store.latest("copy", version.id().key()).isPresent());
        });
    assertEquals(List.of("A", "B"), latestKeys("copy"));
  }

  @Test
  void aListenerHearsBeforeTheWriterIsToldAndMayReadButNotWrite() {
    List<Long> heard = new ArrayList<>();
    store.onWrite(written -> heard.add(store.lastChange() * 100 + written.lastChange()));
    put("study", "A", "{}");
    assertEquals(List.of(101L), heard);
    List<RuntimeException> refused = new ArrayList<>();
    store.onWrite(
        written ->
            refused.add(assertThrows(IllegalStateException.class, () -> put("study", "B", "{}"))));
    put("study", "C", "{}");
    assertEquals(1, refused.size());
    assertEquals(List.of("A", "C"), latestKeys("study"));
    assertEquals(List.of(101L, 202L), heard);
  }

  @Test
  void aWriteThatStandsIsNeverToldToHaveFailedWhateverAListenerDoes() {
    List<Long> heard = new ArrayList<>();
    store.onWrite(
        written -> {
          throw new IllegalStateException("the disk of the index is full");
        });
    store.onWrite(written -> heard.add(written.lastChange()));
    WriteAnswer answer =
        store.write(List.of(Write.put("study", "A", "{}")), "ann", "a full disk elsewhere");
    assertTrue(answer.written().isPresent());
    assertEquals(List.of(1L), heard);
    assertEquals(List.of("A"), latestKeys("study"));
  }

  @Test
  void anyEarlierStateCanBeReadWhateverCameAfterIt() {
    put("study", "A", "{\"n\":1}");
    put("study", "B", "{\"n\":1}");
    put("study", "A", "{\"n\":2}");
    store.write(List.of(Write.delete("study", "B")), "ann", "clean");
    put("study", "C", "{\"n\":1}");
    List<String> states = new ArrayList<>();
    for (long change = 0; change <= 6; change++) {
      StringBuilder state = new StringBuilder();
      store.forEachAt(
          change,
          "study",
          version -> state.append(version.id().key()).append(version.version()).append(' '));
      states.add(state.toString().strip());
    }
    assertEquals(List.of("", "A1", "A1 B1", "A2 B1", "A2", "A2 C1", "A2 C1"), states);
    assertEquals(1, store.at(2, "study", "A").orElseThrow().version());
    assertEquals(2, store.at(3, "study", "A").orElseThrow().version());
    assertTrue(store.at(3, "study", "B").isPresent());
    assertTrue(store.at(4, "study", "B").isEmpty());
    assertTrue(store.at(1, "study", "B").isEmpty());
    assertTrue(store.changedAt(5).isPresent());
    assertTrue(store.changedAt(6).isEmpty());
  }

  @Test
  void documentsAreThereAfterReopening() {
    put("study", "A", "{\"title\":\"\u00FCber 5 \u2264 cm \uD83E\uDDB4\"}");
    List<DocumentVersion> before = changesAfter(0);
    store.close();
    store.close();
    assertThrows(IllegalStateException.class, () -> store.latest("study", "A"));
    store = DocumentStore.open(place, CLOCK, Expected.ANYTHING);
    assertEquals(before, changesAfter(0));
    put("study", "A", "{}");
    assertEquals(2, store.lastChange());
  }

  @Test
  void writesWithoutWhoOrWhyAreAMistakeOfTheCaller() {
    List<Write> writes = List.of(Write.put("study", "A", "{}"));
    assertThrows(IllegalArgumentException.class, () -> store.write(writes, " ", "why"));
    assertThrows(IllegalArgumentException.class, () -> store.write(writes, "ann", ""));
    assertThrows(IllegalArgumentException.class, () -> Write.put("Study", "A", "{}"));
    assertThrows(IllegalArgumentException.class, () -> Write.put("study", " ", "{}"));
    assertThrows(IllegalArgumentException.class, () -> Write.put("study", "A", ""));
    assertThrows(IllegalArgumentException.class, () -> Write.delete("study", "A").expecting(-1));
    assertEquals(0, store.lastChange());
  }

  @Test
  void conflictsAreToldUpToALimit() {
    put("study", "A", "{}");
    Iterator<Write> endless =
        Stream.generate(() -> Write.put("study", "A", "{}").expecting(9)).iterator();
    WriteAnswer answer = store.writeAll(endless, "ann", "import");
    assertEquals(VersionWriter.MOST_CONFLICTS, answer.conflicts().size());
  }

  private void put(String kind, String key, String json) {
    WriteAnswer answer = store.write(List.of(Write.put(kind, key, json)), "ann", "test");
    assertEquals(List.of(), answer.conflicts());
  }

  private List<String> latestKeys(String kind) {
    List<String> keys = new ArrayList<>();
    store.forEachLatest(kind, version -> keys.add(version.id().key()));
    return keys;
  }

  private List<DocumentVersion> changesAfter(long change) {
    List<DocumentVersion> changes = new ArrayList<>();
    store.changesAfter(change, changes::add);
    return changes;
  }
}
