package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.curve.Reported;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Scale;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/**
 * Four invented patients of whom one each has the event after 2, 4 and 6 months: the share without
 * it is 75, 50 and 25 % after them (Kaplan and Meier 1958, worked by hand). The axes are 100 points
 * to 10 months and 200 points to 100 %.
 */
class CurveIntoDraftTest {
  private static final String PAPER = "0123456789abcdef0123456789abcdef";

  private static FigureMarks marks(List<Point> points) {
    return new FigureMarks(
        new FigureMarks.Source(false, PAPER, 3),
        new Axis(
            Scale.LINEAR,
            new Axis.Mark(new Point(100, 400), 0),
            new Axis.Mark(new Point(200, 400), 10)),
        new Axis(
            Scale.PERCENT,
            new Axis.Mark(new Point(100, 400), 0),
            new Axis.Mark(new Point(100, 200), 100)),
        points);
  }

  private static FigureMarks falling() {
    return marks(
        List.of(
            new Point(100, 200),
            new Point(120, 250),
            new Point(140, 300),
            new Point(160, 350),
            new Point(180, 350)));
  }

  private static Reported reported(OptionalInt events) {
    return new Reported(
        4, List.of(0.0, 5.0), List.of(4, 2), List.of(), events, OptionalDouble.of(4));
  }

  private static CurveOf of(boolean withEvent, OptionalInt events) {
    return new CurveOf(
        "A", "time-to-union", "months", withEvent, reported(events), Optional.of("Figure 2"));
  }

  private static CurveMade made(FigureMarks marks, CurveOf of) {
    return CurveMade.of(marks.axes().rows(marks.points()), of.withEvent(), of.reported());
  }

  private static Draft draft() {
    Draft draft = Draft.of("invented2031");
    int study = draft.rows(Template.STUDIES).get(0).number();
    int arm = draft.rows(Template.ARMS).get(0).number();
    return draft
        .withCell(study, "title", "Four invented patients", Optional.empty())
        .withCell(study, "first_author", "Invented", Optional.empty())
        .withCell(study, "year", "2031", Optional.empty())
        .withCell(arm, "method", "bone-transport", Optional.empty())
        .withCell(arm, "patients", "4", Optional.empty());
  }

  @Test
  void eachPointAndNumberAtRiskIsARowAndTheRestStandsInTheFirst() {
    CurveOf of = of(false, OptionalInt.of(3));
    CurveMade.Made made = (CurveMade.Made) made(falling(), of);
    Draft taken = CurveIntoDraft.take(draft(), falling(), of, made.steps(), 0);
    DraftCurve curve = CurveIntoDraft.in(taken).get(0);
    assertEquals(List.of("0 100", "2 75", "4 50", "6 25", "8 25"), curve.shares());
    assertEquals(List.of("0 4", "5 2"), curve.atRisk());
    assertEquals("4", curve.patients());
    assertEquals("3", curve.events());
    assertEquals("4", curve.median());
    assertEquals("Figure 2", curve.place());
    assertEquals(falling(), curve.marks().orElseThrow());
    assertEquals(3, curve.reading().orElseThrow().page());
    assertTrue(curve.reading().orElseThrow().boxes().get(0).left() < 100);
  }

  @Test
  void theRowsBecomeTheCurveOfARecordAndComeBackToTheDraftWithTheirMarks() {
    CurveOf of = of(false, OptionalInt.of(3));
    CurveMade.Made made = (CurveMade.Made) made(falling(), of);
    Draft taken = CurveIntoDraft.take(draft(), falling(), of, made.steps(), 0);
    DraftCheck check = DraftCheck.of(taken);
    Study study = check.study().orElseThrow(() -> new AssertionError(check.noted().toString()));
    PublishedCurve curve = study.curves().get(0);
    assertEquals(
        List.of(100.0, 75.0, 50.0, 25.0, 25.0),
        curve.points().stream().map(PublishedCurve.Point::share).toList());
    assertEquals(OptionalInt.of(4), curve.start());
    DraftCurve again = CurveIntoDraft.in(Draft.of(study, 1)).get(0);
    assertEquals(falling(), again.marks().orElseThrow());
    assertEquals(List.of("0 4", "5 2"), again.atRisk());
    assertEquals(1, CurveIntoDraft.in(Draft.of(study, 1)).size());
  }

  @Test
  void aCurveTakenAgainStandsInThePlaceOfTheOneThatWasMended() {
    CurveOf of = of(false, OptionalInt.of(3));
    CurveMade.Made made = (CurveMade.Made) made(falling(), of);
    Draft once = CurveIntoDraft.take(draft(), falling(), of, made.steps(), 0);
    int block = CurveIntoDraft.in(once).get(0).block();
    Draft twice = CurveIntoDraft.take(once, falling(), of, made.steps(), block);
    assertEquals(1, CurveIntoDraft.in(twice).size());
    assertEquals(once.rows(Template.CURVES).size(), twice.rows(Template.CURVES).size());
  }

  @Test
  void aRisingCurveIsWrittenAsItIsPrinted() {
    FigureMarks rising =
        marks(
            List.of(
                new Point(100, 400),
                new Point(120, 350),
                new Point(140, 300),
                new Point(160, 250),
                new Point(180, 250)));
    CurveOf of = of(true, OptionalInt.empty());
    CurveMade.Made made = (CurveMade.Made) made(rising, of);
    List<Map<String, String>> rows = CurveIntoDraft.rows(rising, of, made.steps());
    assertEquals("with-event", rows.get(0).get("shows"));
    assertEquals("0", rows.get(0).get("share"));
    assertEquals("75", rows.get(3).get("share"));
  }

  @Test
  void whatThePersonSaysAndThePointsShowMustBeTheSame() {
    CurveMade asked = made(falling(), of(true, OptionalInt.empty()));
    assertTrue(((CurveMade.Asked) asked).sentence().contains("do not rise"), asked.toString());
  }

  @Test
  void strokesAtOneTimeAreCountedInOneRow() {
    CurveOf of =
        new CurveOf(
            "A",
            "time-to-union",
            "months",
            false,
            new Reported(
                4,
                List.of(),
                List.of(),
                List.of(7.0, 7.0),
                OptionalInt.empty(),
                OptionalDouble.empty()),
            Optional.empty());
    CurveMade.Made made = (CurveMade.Made) made(falling(), of);
    List<Map<String, String>> strokes =
        CurveIntoDraft.rows(falling(), of, made.steps()).stream()
            .filter(row -> row.containsKey("last_seen"))
            .toList();
    assertEquals(1, strokes.size());
    assertEquals("2", strokes.get(0).get("last_seen"));
    assertEquals("7", strokes.get(0).get("time"));
  }

  @Test
  void marksThatAreNoneAreTakenForNone() {
    assertEquals(Optional.empty(), FigureMarks.ofJson("a figure"));
    assertEquals(Optional.empty(), FigureMarks.ofJson("{\"file\":\"../../etc\"}"));
    String json = falling().toJson();
    assertEquals(Optional.empty(), FigureMarks.ofJson(json.replace("percent", "bent")));
    assertEquals(Optional.of(falling()), FigureMarks.ofJson(json));
  }

  @Test
  void theMarksOfAsManyPointsAsThereMayBeFitTheirCell() {
    List<Point> points = new ArrayList<>();
    for (int at = 0; at < FigureMarks.MOST_POINTS; at++) {
      points.add(new Point(1000.11 + at, 10_000.11 + at));
    }
    assertTrue(marks(points).toJson().length() < PublishedCurve.MOST_MARKS);
  }

  @Test
  void pointsWithoutAPlaceOnThePictureAreToldOneByOne() {
    Axes log =
        Axes.of(
            new Axis(
                Scale.LOG,
                new Axis.Mark(new Point(100, 400), 1),
                new Axis.Mark(new Point(200, 400), 10)),
            falling().y());
    List<Problem> problems = new ArrayList<>();
    try {
      FigurePoints.places(
          log, List.of(new DataPoint(0, 50), new DataPoint(2, 900)), new Box(0, 0, 600, 800));
    } catch (WrongInputException wrong) {
      problems.addAll(wrong.problems());
    }
    assertEquals(
        List.of("log-not-positive", "outside-picture"),
        problems.stream().map(Problem::code).toList());
  }

  @Test
  void aLineOfManyPixelsKeepsItsCorners() {
    List<Point> line = new ArrayList<>();
    for (int x = 0; x <= 3000; x++) {
      line.add(new Point(x / 10.0, x < 1500 ? 100 : 120));
    }
    List<Point> thinned = FigurePoints.thinned(line, 0.3);
    assertEquals(4, thinned.size());
    assertEquals(new Point(149.9, 100), thinned.get(1));
  }
}
