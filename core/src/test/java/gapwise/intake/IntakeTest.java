package gapwise.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.EvidenceBase;
import gapwise.exchange.Warning;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every door does. All studies are invented. */
@Timeout(60)
class IntakeTest {
  private static final Intake.As REVIEWER = new Intake.As("reviewer", "first reading");

  @TempDir Path folder;
  private DocumentStore store;
  private EvidenceBase base;
  private Intake intake;

  @BeforeEach
  void open() {
    store = DocumentStore.open(folder, Clock.systemUTC());
    base = new EvidenceBase(store);
    intake = new Intake(base);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static TableFile file(String name, String... lines) {
    String text = String.join("\r\n", lines) + "\r\n";
    return TableFile.of(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /** One invented study of one arm. */
  private static List<TableFile> study(String id, String title, String doi, String age) {
    return List.of(
        file("studies.csv", "study_id,title,doi,note", id + "," + title + "," + doi + ",plain"),
        file("arms.csv", "study_id,arm_id,method,age_mean", id + ",A,autograft," + age));
  }

  private static List<TableFile> study(String id, String doi) {
    return study(id, "Invented " + id, doi, "40");
  }

  private Taken take(List<TableFile> files, String... acknowledged) {
    return take(intake, files, Set.of(acknowledged));
  }

  /** What changes is agreed to; {@code ChangesAskedTest} is about that. */
  private static Taken take(Intake intake, List<TableFile> files, Set<String> acknowledged) {
    Agreement agreement = new Agreement(acknowledged::contains, change -> true, Set.of());
    return intake.take(files, agreement, REVIEWER, rows -> {}, ChangeListener.NONE);
  }

  private Taken.Stored stored(List<TableFile> files, String... acknowledged) {
    Taken taken = take(files, acknowledged);
    assertTrue(taken instanceof Taken.Stored, taken.toString());
    return (Taken.Stored) taken;
  }

  private List<Warning> asked(List<TableFile> files, String... acknowledged) {
    Taken taken = take(files, acknowledged);
    assertTrue(taken instanceof Taken.Asks, taken.toString());
    return ((Taken.Asks) taken).open();
  }

  private static List<String> codes(List<Warning> warnings) {
    return warnings.stream().map(warning -> warning.problem().code()).toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10.1000/abc",
        "10.1000/ABC",
        "https://doi.org/10.1000/abc",
        "HTTPS://DX.DOI.ORG/10.1000/ABC",
        "doi:10.1000/abc"
      })
  void onePaperInTwoImportsIsAskedAboutHoweverItsDoiIsWritten(String doi) {
    stored(study("first", "10.1000/abc"));
    List<Warning> open = asked(study("second", doi));
    assertEquals(List.of("same-paper-twice"), codes(open));
    assertTrue(open.get(0).problem().message().contains("'first'"), open.toString());
    assertEquals("second", open.get(0).problem().about());
    assertEquals(List.of("first"), ids(), "nothing is stored until somebody has looked");
    assertEquals(1, stored(study("second", doi), open.get(0).key()).record().saved());
  }

  @Test
  void aDoiIsKeptWithoutTheAddressBeforeIt() {
    stored(study("first", "https://doi.org/10.1000/ABC"));
    assertEquals(
        "10.1000/ABC",
        base.latest().study("first").orElseThrow().study().citation().doi().orElseThrow());
  }

  @Test
  void aDefinitionReadFromWordsIsToldAndStopsNothing() {
    Taken.Stored stored =
        stored(
            List.of(
                file(
                    "studies.csv",
                    "study_id,title,union_definition",
                    "first,Invented first,bridging of three cortices"),
                file("arms.csv", "study_id,arm_id,method", "first,A,autograft")));
    assertEquals(1, stored.record().saved());
    assertEquals(List.of(), stored.record().acknowledged());
    assertEquals(List.of("definition-read-from-words"), codes(stored.proposals()));
    assertEquals("first", stored.proposals().get(0).problem().about());
  }

  @Test
  void aNewVersionOfAStudyIsNotComparedWithItsOldSelfNorIsAnotherWithIt() {
    stored(study("first", "10.1000/abc"));
    assertEquals(1, stored(study("first", "10.1000/new")).record().saved());
    assertEquals(1, stored(study("second", "10.1000/abc")).record().saved());
  }

  @Test
  void aPairAcknowledgedAtOneStudyIsNotAskedAgainAtTheOtherUntilItSharesSomethingElse() {
    stored(study("first", "10.1000/abc"));
    List<Warning> open = asked(study("second", "10.1000/abc"));
    stored(study("second", "10.1000/abc"), open.get(0).key());
    assertEquals(
        1, stored(study("first", "Corrected", "10.1000/abc", "40")).record().saved(), "same pair");
    stored(study("first", "Corrected", "10.1000/def", "40"));
    assertEquals(
        List.of("same-paper-twice"), codes(asked(study("second", "10.1000/def"))), "another DOI");
  }

  @Test
  void bothOfTwoStudiesThatChangePlacesAreComparedAsTheyWillStand() {
    stored(study("first", "10.1000/abc"));
    stored(study("second", "10.1000/def"));
    List<TableFile> swapped =
        List.of(
            file(
                "studies.csv",
                "study_id,title,doi",
                "first,Invented first,10.1000/def",
                "second,Invented second,10.1000/abc"),
            file("arms.csv", "study_id,arm_id,method", "first,A,autograft", "second,A,autograft"));
    assertEquals(2, stored(swapped).record().saved());
  }

  @Test
  void anIdenticalFileAsksNothingEvenWhenItsDoubtsWereLetStandElsewhereOrItHasSheetsOfItsOwn() {
    List<TableFile> files = new ArrayList<>(study("first", "Invented", "10.1000/abc", "12"));
    files.add(file("remarks.csv", "anything", "goes"));
    List<Warning> open = asked(files);
    assertEquals(List.of("sheet-not-read", "age-unusual"), codes(open));
    String[] keys = open.stream().map(Warning::key).toArray(String[]::new);
    stored(files, keys);
    Taken.Stored again = stored(files);
    assertEquals(0, again.record().saved());
    assertEquals(1, again.record().unchanged());
    assertEquals(List.of(), again.record().acknowledged());
  }

  @Test
  void aStudyThatStandsThereUnchangedAsksNothingThoughNobodyEverAcknowledgedIt() {
    var known = study("first", "Invented", "10.1000/abc", "12");
    Taken read = intake.take(known, Agreement.ALL, REVIEWER, rows -> {}, ChangeListener.NONE);
    String id = ((Taken.Stored) read).compared().fresh().get(0);
    var study = base.latest().study(id).orElseThrow().study();
    try (DocumentStore other = DocumentStore.open(folder.resolve("other"), Clock.systemUTC())) {
      EvidenceBase old = new EvidenceBase(other);
      old.saveAll(List.of(study).iterator(), "reviewer", "before keys were kept", List.of());
      Taken taken = take(new Intake(old), known, Set.of());
      assertEquals(1, ((Taken.Stored) taken).record().unchanged());
    }
  }

  @Test
  void aNewStudyIsStillComparedWithAnUnchangedOneThatStandsBelowItInTheFile() {
    stored(study("first", "10.1000/abc"));
    List<TableFile> both =
        List.of(
            file(
                "studies.csv",
                "study_id,title,doi,note",
                "second,Invented second,10.1000/abc,plain",
                "first,Invented first,10.1000/abc,plain"),
            file(
                "arms.csv",
                "study_id,arm_id,method,age_mean",
                "second,A,autograft,40",
                "first,A,autograft,40"));
    List<Warning> open = asked(both);
    assertEquals(List.of("same-paper-twice"), codes(open));
    assertEquals("second", open.get(0).problem().about());
  }

  @Test
  void aDoubtAcknowledgedOnceIsNotAskedAgainUntilTheValueUnderItChanges() {
    List<Warning> open = asked(study("first", "Invented", "10.1000/abc", "12"));
    Taken.Stored first = stored(study("first", "Invented", "10.1000/abc", "12"), open.get(0).key());
    assertEquals(List.of(open.get(0).key()), first.record().acknowledgedKeys());
    Taken.Stored corrected = stored(study("first", "A longer title", "10.1000/abc", "12"));
    assertEquals(1, corrected.record().saved(), "the study has changed, its doubt has not");
    assertEquals(
        List.of("age-unusual"),
        codes(asked(study("first", "A longer title", "10.1000/abc", "11"))));
  }

  @Test
  void keysOutliveAClosedStoreAndRecordsWithoutThemReadAsNone() {
    store.write(
        List.of(
            Write.put(
                EvidenceBase.IMPORT,
                "old",
                "{\"saved\":1,\"unchanged\":0,\"acknowledged\":[{\"where\":\"sheet arms, row 2\","
                    + "\"code\":\"age-unusual\",\"message\":\"An age of 12 years is unusual.\"}]}")),
        "reviewer",
        "before keys were kept");
    assertEquals(Set.of(), base.latest().acknowledgedKeys());
    assertEquals("", base.latest().imports().get(0).record().acknowledged().get(0).about());
    List<Warning> open = asked(study("first", "Invented", "10.1000/abc", "12"));
    stored(study("first", "Invented", "10.1000/abc", "12"), open.get(0).key());
    store.close();
    open();
    assertEquals(Set.of(open.get(0).key()), base.latest().acknowledgedKeys());
    assertEquals("first", base.latest().imports().get(1).record().acknowledged().get(0).about());
  }

  @Test
  void anotherSheetIsAskedAboutAgainInAFileOfOtherStudies() {
    TableFile remarks = file("remarks.csv", "anything", "goes");
    List<TableFile> one = new ArrayList<>(study("first", "10.1000/abc"));
    one.add(remarks);
    String key = asked(one).get(0).key();
    stored(one, key);
    List<TableFile> changed = new ArrayList<>(study("first", "10.1000/changed"));
    changed.add(remarks);
    assertEquals(1, stored(changed).record().saved());
    List<TableFile> other = new ArrayList<>(study("second", "10.1000/def"));
    other.add(remarks);
    assertEquals(List.of("sheet-not-read"), codes(asked(other)));
  }

  @Test
  void whatIsWrongIsNotStoredAndIsToldTogetherWithWhatIsDoubtful() {
    List<TableFile> files =
        List.of(
            file("studies.csv", "study_id,title", "first,Invented", "second,Invented too"),
            file(
                "arms.csv",
                "study_id,arm_id,method,age_mean,lost_to_follow_up",
                "first,A,autograft,12,",
                "second,A,autograft,40,-3"));
    Taken.Wrong wrong = (Taken.Wrong) take(files);
    assertEquals(
        List.of("impossible", "age-unusual"), wrong.kinds().stream().map(NotedKind::code).toList());
    assertEquals(
        "second, sheet arms, row 3, column E (lost_to_follow_up): Found '-3'; a whole number of 0"
            + " or more was expected. Check it against the paper and correct it.",
        wrong.kinds().get(0).all().get(0).line());
    assertEquals(List.of(), ids());
  }

  @Test
  void oneThingIsToldOnce() {
    Taken.Wrong negative = (Taken.Wrong) take(study("first", "Invented", "10.1000/abc", "-3"));
    assertEquals(List.of("negative"), codesOf(negative), "no doubt about what cannot be");
    Taken.Wrong untitled = (Taken.Wrong) take(study("first", "", "10.1000/abc", "40"));
    assertEquals(List.of("missing-value"), codesOf(untitled), "one missing title, one problem");
    TableFile none = file("filled.xlsx", "no workbook");
    Taken.Wrong unread = (Taken.Wrong) take(List.of(none));
    assertEquals(1, unread.kinds().size(), "a file that cannot be read lacks no sheet: " + unread);
  }

  private static List<String> codesOf(Taken.Wrong wrong) {
    return wrong.kinds().stream()
        .flatMap(kind -> kind.all().stream())
        .map(noted -> noted.problem().code())
        .toList();
  }

  @Test
  void ofTwoImportsAtOneTimeTheSecondIsComparedWithTheFirst() throws Exception {
    ExecutorService doors = Executors.newFixedThreadPool(2);
    try {
      List<Callable<Taken>> both =
          List.of(
              () -> take(study("first", "10.1000/abc")),
              () -> take(new Intake(base), study("second", "10.1000/abc"), Set.of()));
      int stored = 0;
      int asked = 0;
      for (Future<Taken> taken : doors.invokeAll(both)) {
        stored += taken.get() instanceof Taken.Stored ? 1 : 0;
        asked += taken.get() instanceof Taken.Asks ? 1 : 0;
      }
      assertEquals(1, stored);
      assertEquals(1, asked);
      assertEquals(1, ids().size());
    } finally {
      doors.shutdownNow();
    }
  }

  private List<String> ids() {
    List<String> ids = new ArrayList<>();
    base.latest().forEach(kept -> ids.add(kept.study().id()));
    return ids.stream().sorted().collect(Collectors.toList());
  }
}
