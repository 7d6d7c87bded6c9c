package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.RandomStudies;
import gapwise.exchange.Template;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A study as rows that somebody types. All studies are invented. */
class DraftTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aStudyTakenToTheDeskAndReadAgainIsTheSameStudy(long seed) {
    for (Study study : new RandomStudies(seed).some(20)) {
      Draft draft = DraftJson.read(DraftJson.write(Draft.of(study, 3)));
      Imported read =
          Import.typed(new DraftSheets(draft).sheets(), KnownEvidence.NONE, key -> true).imported();
      assertTrue(read instanceof Imported.Ready || read instanceof Imported.Wrong, "read: " + read);
      if (read instanceof Imported.Ready ready) {
        assertEquals(List.of(study), ready.studies());
      } else {
        // What the random study has that cannot be, such as more events than patients, is found.
        assertTrue(
            DraftCheck.of(draft).noted().stream()
                .allMatch(one -> one.weight() != Noted.Weight.IMPOSSIBLE || one.row().isPresent()),
            "each is at its row");
      }
    }
  }

  @Test
  void aNewStudyHasOneGroupAndSaysWhatItNeeds() {
    DraftCheck check = DraftCheck.of(Draft.of("example2031"));
    assertEquals(0, check.count(Noted.Weight.IMPOSSIBLE));
    assertTrue(
        check.noted().stream()
            .anyMatch(
                one -> one.weight() == Noted.Weight.NEEDED && one.columns().contains("title")));
    assertTrue(
        check.noted().stream()
            .anyMatch(
                one -> one.weight() == Noted.Weight.NEEDED && one.columns().contains("method")));
  }

  @Test
  void whatIsImpossibleIsToldAtItsCell() {
    Draft draft = complete();
    int outcome = draft.rows(Template.OUTCOMES).get(0).number();
    Draft wrong = draft.withCell(outcome, "events", "33", Optional.empty());
    List<Noted> noted = DraftCheck.of(wrong).of(outcome);
    assertTrue(
        noted.stream()
            .anyMatch(
                one ->
                    one.weight() == Noted.Weight.IMPOSSIBLE
                        && (one.columns().contains("events") || one.columns().contains("total"))),
        "noted: " + noted);
  }

  @Test
  void aGroupsOtherNameGoesToItsOutcomesAndLeavingItTakesThemAlong() {
    Draft draft = complete();
    int arm = draft.rows(Template.ARMS).get(0).number();
    Draft renamed = draft.withCell(arm, Template.ARM, "transport", Optional.empty());
    assertEquals("transport", renamed.rows(Template.OUTCOMES).get(0).text(Template.ARM));
    assertEquals(List.of(), renamed.withoutRow(arm).rows(Template.OUTCOMES));
  }

  @Test
  void whatIsRightBecomesTheStudyThatATemplateWouldGive() {
    DraftCheck check = DraftCheck.of(complete());
    assertEquals(0, check.count(Noted.Weight.IMPOSSIBLE), "noted: " + check.noted());
    assertEquals(0, check.count(Noted.Weight.NEEDED), "noted: " + check.noted());
    Study study = check.study().orElseThrow();
    assertEquals("example2031", study.id());
    assertEquals(1, study.outcomes().size());
  }

  /** An invented study with one group and one outcome. */
  static Draft complete() {
    Draft draft = Draft.of("example2031");
    int study = draft.rows(Template.STUDIES).get(0).number();
    int arm = draft.rows(Template.ARMS).get(0).number();
    return draft
        .withCell(study, "title", "An invented series", Optional.empty())
        .withCell(study, "invented", "yes", Optional.empty())
        .withCell(study, "year", "2031", Optional.empty())
        .withCell(study, "first_author", "Example", Optional.empty())
        .withCell(arm, "method", "bone-transport", Optional.empty())
        .withCell(arm, "patients", "32", Optional.empty())
        .withRow(
            Template.OUTCOMES,
            Map.of(
                Template.ARM,
                "A",
                "outcome",
                "primary-union",
                "events",
                "26",
                "total",
                "32",
                "unit_counted",
                "limbs"));
  }
}
