package gapwise.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.EvidenceBase;
import gapwise.evidence.Study;
import gapwise.store.DocumentStore;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongConsumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands in the base is replaced by nobody's oversight. All studies are invented. */
class ChangesAskedTest {
  private static final Intake.As REVIEWER = new Intake.As("reviewer", "second reading");

  @TempDir Path folder;
  private DocumentStore store;
  private EvidenceBase base;
  private Intake intake;
  private final List<StudyChange> told = new ArrayList<>();

  private final ChangeListener listener =
      new ChangeListener() {
        @Override
        public void begin() {
          told.clear();
        }

        @Override
        public void change(StudyChange change, boolean agreed) {
          told.add(change);
        }
      };

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

  private static TableFile file(String name, String text) {
    return TableFile.of(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Invented studies of one group each, with these titles; the first is "a", the next "b". */
  private static List<TableFile> titled(String... titles) {
    StringBuilder studies = new StringBuilder("study_id,title\r\n");
    StringBuilder arms = new StringBuilder("study_id,arm_id,method\r\n");
    for (int number = 0; number < titles.length; number++) {
      String id = Character.toString('a' + number);
      studies.append(id).append(',').append(titles[number]).append("\r\n");
      arms.append(id).append(",A,autograft\r\n");
    }
    return List.of(file("studies.csv", studies.toString()), file("arms.csv", arms.toString()));
  }

  private Taken take(List<TableFile> files, Agreement agreement) {
    return intake.take(files, agreement, REVIEWER, rows -> {}, listener);
  }

  private Taken take(List<TableFile> files, LongConsumer progress, Set<String> keys) {
    Agreement agreed = new Agreement(key -> false, one -> keys.contains(one.key()), Set.of());
    return intake.take(files, agreed, REVIEWER, progress, listener);
  }

  private String title(String id) {
    return base.latest().study(id).orElseThrow().study().citation().title();
  }

  private static Study changed(Study study) {
    return Study.with(study.id(), study.citation()).arms(study.arms()).note("changed").build();
  }

  private void stored(List<TableFile> files) {
    assertInstanceOf(Taken.Stored.class, take(files, Agreement.ALL));
  }

  @Test
  void aStudyThatStandsThereWithOtherContentIsAskedAboutAndNothingIsStored() {
    stored(titled("Quiet roads", "Old bridges"));
    Taken.Asks asks =
        assertInstanceOf(
            Taken.Asks.class, take(titled("Quiet roads", "New bridges", "Far"), Agreement.NONE));
    assertEquals(1, asks.changes());
    assertEquals(List.of("a"), asks.compared().same());
    assertEquals(List.of("b"), asks.compared().changed());
    assertEquals(List.of("c"), asks.compared().fresh());
    assertEquals("Old bridges", told.get(0).before().orElseThrow().citation().title());
    assertEquals("New bridges", told.get(0).after().citation().title());
    assertEquals("Old bridges", title("b"));
    assertEquals(Optional.empty(), base.latest().study("c"));
  }

  @Test
  void onceAgreedToItReplacesAndTheOldVersionStaysInTheHistory() {
    stored(titled("Quiet roads"));
    take(titled("Loud roads"), Agreement.NONE);
    String key = told.get(0).key();
    Taken.Stored stored =
        assertInstanceOf(Taken.Stored.class, take(titled("Loud roads"), rows -> {}, Set.of(key)));
    assertEquals(List.of("a"), stored.compared().changed());
    assertEquals("Loud roads", title("a"));
    assertEquals(2, base.latest().history("a").size());
  }

  @Test
  void anotherContentOrAnotherVersionBelowItIsAskedAboutAnew() {
    stored(titled("Quiet roads"));
    take(titled("Loud roads"), Agreement.NONE);
    String key = told.get(0).key();
    assertInstanceOf(Taken.Asks.class, take(titled("Louder roads"), rows -> {}, Set.of(key)));
    base.remove("a", "another", "by mistake", 1);
    stored(titled("Still roads"));
    assertInstanceOf(Taken.Asks.class, take(titled("Loud roads"), rows -> {}, Set.of(key)));
    assertNotEquals(key, told.get(0).key());
    assertEquals("Still roads", title("a"));
  }

  @Test
  void aStudyThatSomebodyChangesWhileTheFileIsReadIsAskedAboutAnew() {
    stored(titled("Quiet roads"));
    take(titled("Loud roads"), Agreement.NONE);
    String key = told.get(0).key();
    boolean[] once = {false};
    LongConsumer meanwhile =
        rows -> {
          if (!once[0]) {
            once[0] = true;
            base.save(changed(base.latest().study("a").orElseThrow().study()), "x", "meanwhile", 1);
          }
        };
    assertInstanceOf(Taken.Asks.class, take(titled("Loud roads"), meanwhile, Set.of(key)));
    assertTrue(once[0], "somebody came in between");
    assertEquals("Quiet roads", title("a"));
    assertEquals(2, told.get(0).stamp().version());
  }

  @Test
  void aNewPaperThatComesInMeanwhileIsComparedWithBeforeAnythingIsStored() {
    boolean[] once = {false};
    List<TableFile> other =
        List.of(
            file("studies.csv", "study_id,title,doi\r\nz,Other words,10.1000/abc\r\n"),
            file("arms.csv", "study_id,arm_id,method\r\nz,A,autograft\r\n"));
    List<TableFile> mine =
        List.of(
            file("studies.csv", "study_id,title,doi\r\na,My words,10.1000/abc\r\n"),
            file("arms.csv", "study_id,arm_id,method\r\na,A,autograft\r\n"));
    // Another process has a base of its own over the same store, and does not wait for this one.
    Intake elsewhere = new Intake(new EvidenceBase(store));
    LongConsumer meanwhile =
        rows -> {
          if (!once[0]) {
            once[0] = true;
            elsewhere.take(other, Agreement.ALL, REVIEWER, some -> {}, ChangeListener.NONE);
          }
        };
    Taken.Asks asks = assertInstanceOf(Taken.Asks.class, take(mine, meanwhile, Set.of()));
    assertTrue(once[0], "somebody came in between");
    assertEquals("same-paper-twice", asks.open().get(0).problem().code());
    assertEquals(Optional.empty(), base.latest().study("a"));
  }

  @Test
  void whatIsLeftStaysAsItStandsAndTheRestIsStored() {
    stored(titled("Quiet roads", "Old bridges"));
    Agreement leaving = new Agreement(key -> false, change -> false, Set.of("a"));
    List<TableFile> files = titled("Loud roads", "Old bridges", "Far hills");
    Taken.Stored stored = assertInstanceOf(Taken.Stored.class, take(files, leaving));
    assertEquals(List.of("a"), stored.compared().left());
    assertEquals(List.of("c"), stored.compared().fresh());
    assertEquals("Quiet roads", title("a"));
    assertEquals("Far hills", title("c"));
  }

  @Test
  void aWithdrawnStudyComesBackOnlyWhereAPersonAgrees() {
    stored(titled("Quiet roads"));
    base.remove("a", "reviewer", "not about trauma", 1);
    assertInstanceOf(Taken.Asks.class, take(titled("Quiet roads"), Agreement.NONE));
    assertEquals(Optional.empty(), told.get(0).before());
    assertEquals("not about trauma", told.get(0).stamp().why());
    assertEquals(Optional.empty(), base.latest().study("a"));
    stored(titled("Quiet roads"));
    assertEquals("Quiet roads", title("a"));
  }

  @Test
  void doubtsAndChangesAreAskedInOneGo() {
    stored(titled("Quiet roads"));
    List<TableFile> files =
        List.of(
            file("studies.csv", "study_id,title\r\na,Loud roads\r\n"),
            file("arms.csv", "study_id,arm_id,method,age_mean\r\na,A,autograft,12\r\n"));
    Taken.Asks asks = assertInstanceOf(Taken.Asks.class, take(files, Agreement.NONE));
    assertEquals(1, asks.open().size());
    assertEquals(1, asks.changes());
  }
}
