package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.LastSeen;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sheet curves of an invented study: 20 limbs, the share united over two years. */
class CurveRowsTest {
  private static FilledTemplate read(FilledTemplate template, String time, String... cells) {
    String[] all = new String[cells.length + 6];
    all[0] = "study_id=s1";
    all[1] = "arm_id=A";
    all[2] = "outcome=time-to-union";
    all[3] = "time=" + time;
    all[4] = "time_unit=months";
    all[5] = "shows=with-event";
    System.arraycopy(cells, 0, all, 6, cells.length);
    return template.add("curves", all);
  }

  private static FilledTemplate drawn() {
    FilledTemplate template = FilledTemplate.sound();
    read(template, "0", "share=0", "at_risk=20", "patients=20", "marks={\"a\": 1}");
    read(template, "6", "share=25", "at_risk=15", "place=Figure 3");
    read(template, "9", "share=50");
    read(template, "10", "last_seen=2");
    read(template, "12", "share=70", "at_risk=6", "median=9");
    return read(template, "24", "share=85", "at_risk=2", "events=16");
  }

  private static Study study(FilledTemplate template) {
    return ((Imported.Ready) template.read()).studies().get(0);
  }

  @Test
  void rowsOfOneArmAndOutcomeBecomeOneCurve() {
    assertEquals(List.of(), drawn().found());
    List<PublishedCurve> curves = study(drawn()).curves();
    assertEquals(1, curves.size());
    PublishedCurve curve = curves.get(0);
    assertEquals("A", curve.arm());
    assertEquals(Unit.MONTHS, curve.unit());
    assertEquals(CurveShows.WITH_EVENT, curve.shows());
    assertEquals(
        List.of(
            new Point(0, 0),
            new Point(6, 25),
            new Point(9, 50),
            new Point(12, 70),
            new Point(24, 85)),
        curve.points());
    assertEquals(
        List.of(new AtRisk(0, 20), new AtRisk(6, 15), new AtRisk(12, 6), new AtRisk(24, 2)),
        curve.atRisk());
    assertEquals(List.of(new LastSeen(10, 2)), curve.lastSeen());
    assertEquals(
        new PublishedCurve.Totals(OptionalInt.of(20), OptionalInt.of(16), OptionalDouble.of(9)),
        curve.totals());
    assertEquals(Optional.of("{\"a\": 1}"), curve.marks());
    assertEquals(Optional.of("Figure 3"), curve.provenance().place());
  }

  @Test
  void rowsMayStandInAnyOrder() {
    FilledTemplate other = FilledTemplate.sound();
    read(other, "24", "share=85", "at_risk=2", "events=16");
    read(other, "12", "share=70", "at_risk=6", "median=9", "place=Figure 3");
    read(other, "10", "last_seen=2", "patients=20", "marks={\"a\": 1}");
    read(other, "0", "share=0");
    read(other, "0", "at_risk=20");
    read(other, "9", "share=50");
    read(other, "6", "share=25");
    read(other, "6", "at_risk=15");
    assertEquals(study(drawn()).curves(), study(other).curves());
  }

  @Test
  void aStudyStoredBeforeThereWereCurvesStillReads() {
    Study none = study(FilledTemplate.sound());
    String text = EvidenceJson.write(none);
    assertTrue(!text.contains("curves"), text);
    assertEquals(List.of(), EvidenceJson.read(text).curves());
    assertEquals(List.of(), study(FilledTemplate.sound().without("curves")).curves());
  }

  @ParameterizedTest(name = "{2}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        // row | cells | code | column | words that the message must hold
        "1 | share=125 | impossible | share | from 0 to 100",
        "1 | time=-3 | impossible | time | 0 or more",
        "1 | time_unit=weeks | curve-contradicts-itself | time_unit | row 2 of the same curve",
        "1 | shows=without-event | curve-contradicts-itself | shows | 'with-event'",
        "1 | patients=19 | curve-contradicts-itself | patients | '20'",
        "2 | time=0;share=0;at_risk=19 | curve-contradicts-itself | at_risk | '20'",
        "2 | time=10;share=60;last_seen=1 | strokes-twice | last_seen | one row",
        "3 | last_seen= | curve-row-empty | share | delete the row",
        "2 | shows=falling | unknown-code | shows | with-event",
        "1 | time_unit= | missing-value | time_unit | Unit of time",
        "1 | arm_id=ALL | curve-of-all-arms | arm_id | one arm",
        "1 | arm_id=C | unknown-arm | arm_id | no arm 'C'",
        "1 | arm_id=B;share= | curve-without-points | share | No row of this curve",
        "0 | study_id=s9 | unknown-study | study_id | no study 's9'",
        "3 | last_seen=;outcome=union;share=40 | curve-of-no-time | outcome | time-to-union",
        "4 | share=40 | curve-turns-back | share | can only rise",
        "4 | at_risk=16 | curve-at-risk-rises | at_risk | after 15",
        "0 | patients=24 | curve-at-risk-start | at_risk | starts with 24",
        "5 | events=21 | curve-more-events-than-patients | events | 20 patients",
      })
  void whatCannotBeIsRefusedAtItsCell(
      int row, String cells, String code, String column, String words) {
    expect(drawn().set("curves", row, cells.split(";")), code, column, words);
  }

  @ParameterizedTest(name = "{2}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | share=20 | curve-start | share | starts near 0 %",
        "0 | patients=30;at_risk=30 | curve-above-arm | patients | the arm has 20",
        "5 | events=4 | curve-events-differ | events | leaves room for",
        "5 | events=19 | curve-events-differ | events | leaves room for",
        "4 | median=14 | curve-median-differs | median | one half at 9 months",
      })
  void whatDoesNotFitIsDoubted(int row, String cells, String code, String column, String words) {
    expect(drawn().set("curves", row, cells.split(";")), code, column, words);
  }

  @Test
  void aMedianOfTheSheetOutcomesIsHeldAgainstTheCurve() {
    // Half of the 85 % with the event had it by month 9, half of all patients too.
    FilledTemplate near = drawn().set("outcomes", 2, "median=8", "mean=", "sd=");
    assertEquals(List.of(), near.found());
    FilledTemplate far = drawn().set("outcomes", 2, "median=16", "mean=", "sd=");
    expect(far, "curve-against-outcome", "share", "median of 16 months");
  }

  @Test
  void aMedianThatTheCurveNeverReachesIsDoubted() {
    FilledTemplate template = FilledTemplate.sound();
    read(template, "0", "share=0", "median=9");
    read(template, "6", "share=25");
    expect(template, "curve-median-differs", "median", "never comes to one half");
  }

  private static void expect(FilledTemplate template, String code, String column, String words) {
    List<Problem> found = template.found();
    Problem problem =
        found.stream()
            .filter(one -> one.code().equals(code))
            .findFirst()
            .orElseThrow(() -> new AssertionError(code + " is not among " + found));
    assertTrue(problem.where().contains("curves"), problem.where());
    assertTrue(problem.where().contains(column), problem.where());
    assertTrue(problem.message().contains(words), problem.message());
  }
}
