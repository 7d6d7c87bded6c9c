package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.curation.EvidenceBase;
import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.intake.Intake;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a draft to evidence. All studies are invented. */
class SubmissionTest {
  private static final Intake.As REVIEWER = new Intake.As("AB", "first reading");
  private static final String PAPER = "0123456789abcdef".repeat(2);

  @TempDir Path folder;
  private DocumentStore store;
  private EvidenceBase base;
  private Drafts drafts;
  private Submission submission;

  @BeforeEach
  void open() {
    store = DocumentStore.open(folder, Clock.systemUTC());
    base = new EvidenceBase(store);
    drafts = new Drafts(store.workingCopies());
    submission = new Submission(new Intake(base));
  }

  @AfterEach
  void close() {
    store.close();
  }

  /** All its doubts settled. */
  private Draft settled(Draft draft) {
    Draft done = draft;
    for (Noted one : DraftCheck.of(draft).noted()) {
      if (one.weight() == Noted.Weight.DOUBT) {
        done = done.withSettled(new SettledDoubt(one.key().orElseThrow(), "AB", "as printed"));
      }
    }
    return done;
  }

  @Test
  void aDraftIsKeptAndIsNoEvidenceUntilItIsHandedIn() {
    KeptDraft kept = drafts.begin(DraftTest.complete(), "AB");
    assertEquals(0, store.lastChange(), "a draft is no change of the evidence");
    store.close();
    open();
    Draft again = drafts.find(kept.id()).orElseThrow().draft();
    assertEquals(DraftTest.complete(), again);
    assertTrue(base.latest().study("example2031").isEmpty());
  }

  @Test
  void whatIsDoubtfulIsAskedOnceAndNotAgainUntilItsValueChanges() {
    Draft draft = DraftTest.complete();
    int outcome = draft.rows(Template.OUTCOMES).get(0).number();
    // 26 of 40 where the group has 32: more limbs than patients is doubtful.
    Draft odd = draft.withCell(outcome, "total", "40", Optional.empty());
    HandedInDraft first = submission.handIn(odd, REVIEWER);
    DraftCheck check = assertInstanceOf(HandedInDraft.NotYet.class, first).check();
    assertTrue(check.count(Noted.Weight.DOUBT) > 0, "noted: " + check.noted());

    Draft stands = settled(odd);
    assertInstanceOf(HandedInDraft.Stored.class, submission.handIn(stands, REVIEWER));

    Study study = base.latest().study("example2031").orElseThrow().study();
    Draft mended =
        Draft.of(study, 1)
            .withCell(
                Draft.of(study, 1).rows(Template.STUDIES).get(0).number(),
                "journal",
                "Invented Annals",
                Optional.empty());
    assertInstanceOf(
        HandedInDraft.Stored.class, submission.handIn(mended, REVIEWER), "not asked again");

    Study second = base.latest().study("example2031").orElseThrow().study();
    Draft other = Draft.of(second, 2);
    int row = other.rows(Template.OUTCOMES).get(0).number();
    assertInstanceOf(
        HandedInDraft.NotYet.class,
        submission.handIn(other.withCell(row, "total", "41", Optional.empty()), REVIEWER),
        "another value is another doubt");
  }

  @Test
  void theSecondOfTwoWhoChangeOneStudyIsToldSo() {
    Draft draft = settled(DraftTest.complete());
    assertInstanceOf(HandedInDraft.Stored.class, submission.handIn(draft, REVIEWER));
    Study study = base.latest().study("example2031").orElseThrow().study();
    Draft mine = Draft.of(study, 1);
    Draft theirs = Draft.of(study, 1);
    int row = mine.rows(Template.STUDIES).get(0).number();
    Draft first = mine.withCell(row, "journal", "Invented Annals", Optional.empty());
    Draft second = theirs.withCell(row, "journal", "Invented Letters", Optional.empty());
    assertInstanceOf(HandedInDraft.Stored.class, submission.handIn(first, REVIEWER));
    HandedInDraft.Overtaken overtaken =
        assertInstanceOf(HandedInDraft.Overtaken.class, submission.handIn(second, REVIEWER));
    assertEquals(2, overtaken.conflicts().get(0).foundVersion());
    assertEquals(
        Optional.of("Invented Annals"),
        base.latest().study("example2031").orElseThrow().study().citation().journal());
  }

  @Test
  void aPlaceOnAPageGoesWithTheNumberAndLeavesWithIt() {
    Draft draft = settled(DraftTest.complete());
    int row = draft.rows(Template.OUTCOMES).get(0).number();
    Reading place =
        new Reading("events", PAPER, 2, List.of(new PageBox(10, 20, 40, 30)), "26/32 (81%)");
    Draft read = draft.withCell(row, "events", "26", Optional.of(place));
    assertInstanceOf(HandedInDraft.Stored.class, submission.handIn(read, REVIEWER));
    Study study = base.latest().study("example2031").orElseThrow().study();
    assertEquals(List.of(place), study.outcomes().get(0).provenance().readings());

    Draft again = Draft.of(study, 1);
    assertEquals(Optional.of(PAPER), again.paper());
    int same = again.rows(Template.OUTCOMES).get(0).number();
    Draft typedOver = again.withCell(same, "events", "25", Optional.empty());
    assertEquals(Optional.empty(), typedOver.row(same).orElseThrow().reading("events"));
  }

  @Test
  void aDifferenceNamesEachFieldBeforeAndAfter() {
    Draft draft = settled(DraftTest.complete());
    Study before = DraftCheck.of(draft).study().orElseThrow();
    int row = draft.rows(Template.OUTCOMES).get(0).number();
    Study after =
        DraftCheck.of(draft.withCell(row, "events", "27", Optional.empty())).study().orElseThrow();
    List<StudyDifference.Change> changes = StudyDifference.between(before, after);
    assertEquals(1, changes.size());
    assertEquals("events", changes.get(0).column().name());
    assertEquals("26", changes.get(0).before());
    assertEquals("27", changes.get(0).after());
    assertEquals(List.of("A", "primary-union"), changes.get(0).row());
    assertEquals(List.of(), StudyDifference.between(before, before));
  }

  @Test
  void changesOfDifferentCellsByDifferentPeopleGoTogether() throws InterruptedException {
    String id = drafts.begin(DraftTest.complete(), "AB").id();
    int row = DraftTest.complete().rows(Template.STUDIES).get(0).number();
    List<String> columns = List.of("journal", "volume", "issue", "pages");
    List<Thread> people =
        columns.stream()
            .map(
                column ->
                    new Thread(
                        () ->
                            drafts.change(
                                id,
                                draft -> draft.withCell(row, column, "7", Optional.empty()),
                                "CD")))
            .toList();
    people.forEach(Thread::start);
    for (Thread person : people) {
      person.join();
    }
    DraftRow kept = drafts.find(id).orElseThrow().draft().row(row).orElseThrow();
    columns.forEach(column -> assertEquals("7", kept.text(column)));
    assertTrue(drafts.drop(id));
    assertFalse(drafts.drop(id));
  }
}
