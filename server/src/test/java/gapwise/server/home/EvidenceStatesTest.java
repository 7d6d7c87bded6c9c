package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.LengthShape;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One state of the evidence base holds together while others replace it. The studies are invented:
 * in revision r each has r + 10 of 40 unions and the word "revision r" in its title.
 */
class EvidenceStatesTest {
  private static final int STUDIES = 12;
  private static final int REVISIONS = 25;
  private static final int READERS = 6;
  private static final Question UNION =
      new Question(Outcome.of("union"), SearchRequest.EVERYTHING, Optional.empty(), 1);

  @TempDir Path folder;
  private Home home;

  @BeforeEach
  void open() {
    home = Home.open(folder, Clock.systemUTC());
    store(0);
  }

  @AfterEach
  void close() {
    home.close();
  }

  @Test
  void noResultMixesRevisionsWhileStudiesAreReplacedUnderManyReaders() throws Exception {
    AtomicBoolean stop = new AtomicBoolean();
    ExecutorService readers = Executors.newFixedThreadPool(READERS);
    List<Future<Set<Integer>>> reading = new ArrayList<>();
    for (int reader = 0; reader < READERS; reader++) {
      reading.add(
          readers.submit(
              () -> {
                Set<Integer> seen = new HashSet<>();
                do {
                  seen.add(revisionShown());
                } while (!stop.get());
                return seen;
              }));
    }
    for (int revision = 1; revision <= REVISIONS; revision++) {
      store(revision);
      assertEquals(revision, revisionShown(), "asked right after the import was acknowledged");
    }
    stop.set(true);
    Set<Integer> seen = new HashSet<>();
    for (Future<Set<Integer>> reader : reading) {
      seen.addAll(reader.get());
    }
    readers.shutdown();
    assertTrue(seen.size() > 1, "readers read while revisions were replaced, saw " + seen);
  }

  @Test
  void whatIsHeldStaysAsItIsWhateverComesAfterIt() {
    try (Hold before = home.hold()) {
      store(1);
      store(2);
      assertEquals(0, revision(before.evidence()));
      assertEquals(STUDIES + 1, before.evidence().change());
      assertEquals(1, before.evidence().studies().history("series-3").size());
      try (Hold after = home.hold()) {
        assertNotSame(before.evidence(), after.evidence());
        assertEquals(2, revision(after.evidence()));
        assertEquals(3, after.evidence().studies().history("series-3").size());
      }
    }
  }

  @Test
  void anAnswerIsWorkedOutOnceForAStateAndAnewForTheNext() {
    try (Hold before = home.hold()) {
      Answers answers = before.evidence().answers();
      assertFalse(answers.hasAsked(UNION, Optional.empty()));
      Answer answer = answers.ask(UNION);
      assertTrue(answers.hasAsked(UNION, Optional.empty()));
      assertSame(answer, answers.ask(UNION));
      assertSame(answers.funnel(UNION), answers.funnel(UNION));
      assertSame(
          answers.byLength(UNION, LengthShape.LINE), answers.byLength(UNION, LengthShape.LINE));
      store(1);
      assertSame(answer, answers.ask(UNION));
      try (Hold after = home.hold()) {
        Answers next = after.evidence().answers();
        assertFalse(next.hasSelected(UNION) || next.hasAsked(UNION, Optional.empty()));
        assertFalse(next.hasFunnel(UNION) || next.hasByLength(UNION, LengthShape.LINE));
        assertEquals(
            Set.of(11),
            next.ask(UNION).selection().rows().stream()
                .map(EvidenceStatesTest::events)
                .collect(Collectors.toSet()));
      }
    }
  }

  /** Twelve groups of one method, none of which states a detail of it. */
  @Test
  void anAnswerThatCannotBeSplitIsThatOfTheMethod() {
    try (Hold hold = home.hold()) {
      Answers answers = hold.evidence().answers();
      DetailKind kind = DetailKind.ofMethods().all().get(0);
      assertSame(answers.ask(UNION), answers.ask(UNION, Optional.of(kind)));
    }
  }

  @Test
  void studiesThatDidNotChangeAreNotReadAgainForTheNextState() {
    try (Hold before = home.hold()) {
      Study first = before.evidence().study("series-0").orElseThrow();
      Study second = before.evidence().study("series-1").orElseThrow();
      home.base().saveAll(List.of(series(0, 7)).iterator(), "a reviewer", "one", List.of());
      try (Hold after = home.hold()) {
        assertSame(second, after.evidence().study("series-1").orElseThrow());
        assertNotSame(first, after.evidence().study("series-0").orElseThrow());
      }
    }
  }

  @Test
  void anImportThatTheIndexCannotFollowIsStoredAndPagesSayThatTheyShowAnOlderState()
      throws Exception {
    Path index = folder.resolve("index");
    try (var inside = Files.list(index)) {
      for (Path file : inside.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(index);
    Files.writeString(index, "in the way");
    store(1);
    assertEquals(0, revisionShown());
    assertTrue(home.notice().orElseThrow().contains("at change " + (STUDIES + 1)));
    Files.delete(index);
    store(2);
    assertEquals(2, revisionShown());
    assertEquals(Optional.empty(), home.notice());
  }

  @Test
  void aHomeThatIsClosedGivesNoHold() {
    home.close();
    assertThrows(IllegalStateException.class, home::hold);
  }

  private int revisionShown() {
    try (Hold hold = home.hold()) {
      return revision(hold.evidence());
    }
  }

  /** The one revision that search, studies, rows, answer and numbers of a state tell of. */
  private static int revision(Evidence evidence) {
    Answer answer = evidence.answers().ask(UNION);
    Set<Integer> events =
        answer.selection().rows().stream()
            .map(EvidenceStatesTest::events)
            .collect(Collectors.toSet());
    assertEquals(1, events.size(), "rows of several revisions: " + events);
    int revision = events.iterator().next() - 10;
    assertEquals(STUDIES, answer.selection().rows().size());
    assertEquals(evidence.change(), answer.selection().change());
    assertEquals(evidence.change(), evidence.edition("test").change().orElseThrow());
    assertEquals((revision + 1L) * (STUDIES + 1), evidence.change());
    assertEquals(
        STUDIES,
        evidence
            .search()
            .search(
                SearchRequest.EVERYTHING.withText("revision" + revision),
                StudySearch.Order.TITLE,
                0,
                100)
            .studies());
    Study last = evidence.study("series-" + (STUDIES - 1)).orElseThrow();
    assertTrue(last.citation().title().endsWith("revision" + revision), last.citation().title());
    return revision;
  }

  private static int events(SelectedRow row) {
    return ((ReportedValue.Events) row.value()).count().events().orElseThrow();
  }

  private void store(int revision) {
    home.base()
        .saveAll(
            IntStream.range(0, STUDIES).mapToObj(i -> series(i, revision)).iterator(),
            "a reviewer",
            "revision " + revision,
            List.of());
  }

  private static Study series(int number, int revision) {
    return Study.with(
            "series-" + number,
            Citation.with("Invented series " + number + " revision" + revision)
                .firstAuthor("Tarn")
                .year(2000 + number)
                .build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("autograft")))
                    .baseline(Baseline.with().patients(40).build())
                    .build()))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(revision + 10, 40)))
                    .counted(CountedUnit.LIMBS)
                    .build()))
        .build();
  }
}
