package gapwise.curation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Studies in and out of the store; all are invented. */
class EvidenceBaseTest {
  private static final Instant NOW = Instant.parse("2026-01-02T03:04:05Z");
  private static final Problem DOUBT = new Problem("study, row 3", "long-defect", "30 cm is long.");

  @TempDir Path home;
  private DocumentStore store;
  private EvidenceBase base;

  @BeforeEach
  void open() {
    store = DocumentStore.open(home, Clock.fixed(NOW, ZoneOffset.UTC));
    base = new EvidenceBase(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void aSavedStudyIsReadBackWithWhoWhenAndWhy() {
    SaveAnswer answer = base.save(study("a", "First title"), "reviewer", "extracted", 0);
    assertEquals(Optional.of(new SaveAnswer.Saved(1, 1)), answer.saved());
    KeptStudy kept = base.latest().study("a").orElseThrow();
    assertEquals(study("a", "First title"), kept.study());
    assertEquals(new VersionStamp(1, 1, NOW, "reviewer", "extracted"), kept.stamp());
    assertEquals(Optional.empty(), base.latest().study("b"));
  }

  @Test
  void whoComesSecondIsToldAndOverwritesNothing() {
    base.save(study("a", "First title"), "reviewer", "extracted", 0);
    base.save(study("a", "Second title"), "reviewer", "corrected", 1);
    for (int expected : new int[] {0, 1, 3}) {
      SaveAnswer late = base.save(study("a", "Late title"), "another", "corrected", expected);
      SaveAnswer.NotSaved notSaved = (SaveAnswer.NotSaved) late;
      assertEquals(2, notSaved.conflicts().get(0).foundVersion());
    }
    assertEquals("Second title", base.latest().study("a").orElseThrow().study().citation().title());
  }

  @Test
  void readersSeeEveryWriteFromWhereverItCame() {
    base.save(study("a", "First title"), "reviewer", "extracted", 0);
    base.save(study("b", "Other"), "reviewer", "extracted", 0);
    assertEquals(Set.of("a", "b"), base.latest().studies(Set.of("a", "b", "c")).keySet());
    new EvidenceBase(store).save(study("a", "Second title"), "another", "corrected", 1);
    assertEquals("Second title", base.latest().study("a").orElseThrow().study().citation().title());
    base.remove("b", "another", "not about trauma", 1);
    assertEquals(Set.of("a"), base.latest().studies(Set.of("a", "b", "c")).keySet());
    IntStream.range(0, 40)
        .forEach(number -> base.save(numbered(number), "reviewer", "extracted", 0));
    assertEquals(2, base.latest().study("a").orElseThrow().version());
    assertEquals(1, new EvidenceBase(store).latest().studies(Set.of("invented-7", "b")).size());
  }

  @Test
  void aRemovedStudyKeepsItsHistoryAndCanComeBack() {
    base.save(study("a", "First title"), "reviewer", "extracted", 0);
    assertEquals(
        Optional.of(new SaveAnswer.Saved(2, 2)),
        base.remove("a", "reviewer", "not about trauma", 1).saved());
    assertEquals(Optional.empty(), base.latest().study("a"));
    assertEquals(Optional.empty(), base.remove("a", "reviewer", "twice", 2).saved());
    assertTrue(
        base.save(study("a", "Back"), "reviewer", "was about trauma", 2).saved().isPresent());
    List<StudyVersion> history = base.latest().history("a");
    assertEquals(List.of(1, 2, 3), history.stream().map(v -> v.stamp().version()).toList());
    assertEquals(Optional.empty(), history.get(1).study());
    assertEquals(Optional.of(history.get(0)), base.latest().version("a", 1));
    assertEquals(Optional.empty(), base.latest().version("a", 4));
  }

  @Test
  void anImportIsRememberedWithTheDoubtsThatWereAccepted() {
    Iterator<Study> studies =
        IntStream.range(0, 50).mapToObj(EvidenceBaseTest::numbered).iterator();
    ImportRecord record = base.saveAll(studies, "reviewer", "first search", List.of(DOUBT));
    assertEquals(new ImportRecord(50, 0, List.of(DOUBT), List.of()), record);
    StudiesAt.KeptImport kept = base.latest().imports().get(0);
    assertEquals(record, kept.record());
    assertEquals(new VersionStamp(1, 51, NOW, "reviewer", "first search"), kept.stamp());
    List<String> ids = new ArrayList<>();
    base.latest().forEach(study -> ids.add(study.study().id()));
    assertEquals(50, ids.size());
    assertEquals(ids.stream().sorted().toList(), ids);
  }

  @Test
  void aRepeatedImportAddsVersionsOnlyWhereTheContentChanged() {
    base.saveAll(Stream.of(study("a", "A"), study("b", "B")).iterator(), "r", "first", List.of());
    ImportRecord again =
        base.saveAll(
            Stream.of(study("a", "A"), study("b", "New")).iterator(), "r", "2nd", List.of());
    assertEquals(new ImportRecord(1, 1, List.of(), List.of()), again);
    assertEquals(1, base.latest().study("a").orElseThrow().version());
    assertEquals(2, base.latest().study("b").orElseThrow().version());
    assertEquals(
        List.of("first", "2nd"),
        base.latest().imports().stream().map(i -> i.stamp().why()).toList());
  }

  @Test
  void anImportThatFailsHalfWayChangesNothing() {
    Iterator<Study> torn =
        Stream.of(1, 2, 3)
            .map(
                number -> {
                  if (number == 3) {
                    throw new IllegalStateException("the file ends here");
                  }
                  return numbered(number);
                })
            .iterator();
    assertThrows(
        IllegalStateException.class, () -> base.saveAll(torn, "reviewer", "torn", List.of()));
    assertEquals(0, base.lastChange());
    assertEquals(List.of(), base.latest().imports());
  }

  private static Study numbered(int number) {
    return study("invented-" + number, "Invented study " + number);
  }

  private static Study study(String id, String title) {
    return Study.with(id, Citation.with(title).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("autograft"))).build()))
        .build();
  }
}
