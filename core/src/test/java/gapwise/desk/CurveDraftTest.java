package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.PageBox;
import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Reading;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Curves at the desk: drafts that hold them, and what changed of them in a sentence. */
class CurveDraftTest {
  private static final Study STUDY =
      DemonstrationEvidence.studies().stream()
          .filter(study -> study.id().equals("invented-55"))
          .findFirst()
          .orElseThrow();

  private static Study with(PublishedCurve curve) {
    return STUDY.but().curves(List.of(curve, STUDY.curves().get(1))).build();
  }

  private static PublishedCurve changed(
      List<Point> points, Optional<String> marks, Provenance provenance) {
    PublishedCurve old = STUDY.curves().get(0);
    return new PublishedCurve(
        old.arm(),
        old.outcome(),
        old.unit(),
        old.shows(),
        points,
        old.atRisk(),
        old.lastSeen(),
        old.totals(),
        marks,
        provenance,
        old.missing(),
        old.note());
  }

  private static Reading reading(int page) {
    PageBox box = new PageBox(10, 20, 30, 40);
    return new Reading("share", "0123456789abcdef".repeat(2), page, List.of(box), "");
  }

  @Test
  void aDraftHoldsTheCurvesOfAStudyAndGivesThemBack() {
    DemonstrationEvidence.studies().stream()
        .filter(study -> !study.curves().isEmpty())
        .forEach(
            study -> {
              Draft draft = DraftJson.read(DraftJson.write(Draft.of(study, 1)));
              assertTrue(!draft.rows(Template.CURVES).isEmpty(), study.id());
              assertEquals(Optional.of(study), DraftCheck.of(draft).study());
            });
  }

  @Test
  void placesOnPagesAndMarksComeBackFromTheDesk() {
    PublishedCurve old = STUDY.curves().get(0);
    Provenance provenance =
        new Provenance(Optional.of("Figure 2"), Optional.empty(), List.of(reading(4), reading(5)));
    Study read = with(changed(old.points(), Optional.of("{\"x\": [1, 2.50]}"), provenance));
    assertEquals(Optional.of(read), DraftCheck.of(Draft.of(read, 1)).study());
  }

  @Test
  void whatCannotBeOfACurveIsToldAtItsRow() {
    Draft draft = Draft.of(STUDY, 1);
    DraftRow last =
        draft.rows(Template.CURVES).stream()
            .filter(row -> row.text(Template.ARM).equals("A") && !row.text("share").isEmpty())
            .reduce((first, second) -> second)
            .orElseThrow();
    Draft wrong = draft.withCell(last.number(), "share", "3", Optional.empty());
    assertTrue(
        DraftCheck.of(wrong).noted().stream()
            .anyMatch(one -> one.code().equals("curve-turns-back") && one.row().isPresent()));
    Draft above = draft.withCell(last.number(), "share", "103", Optional.empty());
    assertEquals(1, DraftCheck.of(above).of(last.number()).size());
  }

  @Test
  void aRowThatWasOnlyBegunIsNoneYet() {
    Draft draft = Draft.of(STUDY, 1);
    Draft begun =
        draft.withRow(
            Template.CURVES,
            Map.of(Template.ARM, "A", Template.OUTCOME, "time-to-union", "shows", "with-event"));
    assertEquals(DraftCheck.of(draft).study(), DraftCheck.of(begun).study());
  }

  @Test
  void theUsualColumnsOfACurveStandOnTheScreen() {
    Draft draft = Draft.of(STUDY, 1);
    List<String> shown =
        FormColumns.shown(draft, Template.CURVES, draft.rows(Template.CURVES)).stream()
            .map(TemplateColumn::name)
            .toList();
    assertTrue(shown.containsAll(List.of("time", "time_unit", "shows", "share", "at_risk")));
    assertTrue(!shown.contains(Template.READINGS));
  }

  @Test
  void aChangedCurveIsToldInASentenceAndNotPointByPoint() {
    List<Point> points = new ArrayList<>(STUDY.curves().get(0).points());
    Point second = points.get(1);
    points.set(1, new Point(second.time(), second.share() + 1.5));
    Provenance place = STUDY.curves().get(0).provenance();
    Study after = with(changed(points, Optional.of("{}"), place));
    List<StudyDifference.Change> changes = StudyDifference.between(STUDY, after);
    assertEquals(
        List.of("share", "marks"), changes.stream().map(one -> one.column().name()).toList());
    assertEquals(List.of("A", "time-to-union"), changes.get(0).row());
    assertTrue(
        changes.get(0).before().startsWith(points.size() + " points from 0 % at 0 to 100 %"));
    assertTrue(changes.get(0).after().endsWith("at most 1.5 percentage points from before"));
    assertEquals(List.of(), StudyDifference.between(STUDY, STUDY));
    Study none = STUDY.but().curves(List.of(STUDY.curves().get(1))).build();
    assertTrue(
        StudyDifference.between(STUDY, none).stream().allMatch(one -> one.after().isEmpty()));
  }
}
