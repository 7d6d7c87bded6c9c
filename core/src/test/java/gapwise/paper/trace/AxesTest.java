package gapwise.paper.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axis.Mark;
import gapwise.problem.WrongInputException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Values read off by axes, against arithmetic. */
class AxesTest {
  private static Axis axis(
      Scale scale, double x1, double y1, double v1, double x2, double y2, double v2) {
    return new Axis(scale, new Mark(new Point(x1, y1), v1), new Mark(new Point(x2, y2), v2));
  }

  private static void near(double x, double y, DataPoint point) {
    assertEquals(x, point.x(), 1e-9);
    assertEquals(y, point.y(), 1e-9);
  }

  @Test
  void equalStepsAndPercent() {
    Axes axes =
        Axes.of(
            axis(Scale.LINEAR, 100, 400, 0, 300, 400, 20),
            axis(Scale.PERCENT, 100, 400, 0, 100, 200, 100));
    near(10, 0.5, axes.at(new Point(200, 300)));
    near(-1, 1.05, axes.at(new Point(90, 190)));
    assertEquals(200, axes.placeOf(new DataPoint(10, 0.5)).x(), 1e-9);
    assertEquals(300, axes.placeOf(new DataPoint(10, 0.5)).y(), 1e-9);
  }

  @Test
  void equalRatios() {
    Axes axes =
        Axes.of(
            axis(Scale.LOG, 100, 400, 1, 300, 400, 100),
            axis(Scale.LOG, 100, 400, 0.1, 100, 200, 1000));
    near(10, 10, axes.at(new Point(200, 300)));
    near(1, 0.1, axes.at(new Point(100, 400)));
  }

  /** A figure turned by 30 degrees reads the same as one that stands upright. */
  @Test
  void aFigureThatLiesAslant() {
    double cos = Math.cos(Math.PI / 6);
    double sin = Math.sin(Math.PI / 6);
    Axes axes =
        Axes.of(
            axis(Scale.LINEAR, 50 * cos, 50 * sin, 5, 200 * cos, 200 * sin, 20),
            axis(Scale.LINEAR, 30 * sin, -30 * cos, 3, 90 * sin, -90 * cos, 9));
    Point place = new Point(120 * cos + 70 * sin, 120 * sin - 70 * cos);
    near(12, 7, axes.at(place));
    Point back = axes.placeOf(new DataPoint(12, 7));
    assertEquals(place.x(), back.x(), 1e-9);
    assertEquals(place.y(), back.y(), 1e-9);
  }

  @Test
  void marksAwayFromTheCorner() {
    Axes axes =
        Axes.of(
            axis(Scale.LINEAR, 120, 430, 2, 300, 430, 20),
            axis(Scale.LINEAR, 80, 380, 10, 80, 200, 100));
    near(10, 50, axes.at(new Point(200, 300)));
    assertEquals(
        List.of(new DataPoint(2, 100)),
        axes.rows(List.of(new Point(120, 200))).stream()
            .map(p -> new DataPoint(Math.rint(p.x() * 1e9) / 1e9, Math.rint(p.y() * 1e9) / 1e9))
            .toList());
  }

  @Test
  void everyFaultOfTheMarksIsToldAtOnce() {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () ->
                Axes.of(
                    axis(Scale.LOG, 100, 400, 0, 300, 400, 20),
                    axis(Scale.LINEAR, 100, 400, 7, 100, 401, 7)));
    assertEquals(
        List.of("log-not-positive", "marks-too-near", "marks-equal"),
        wrong.problems().stream().map(p -> p.code()).toList());
    WrongInputException alike =
        assertThrows(
            WrongInputException.class,
            () ->
                Axes.of(
                    axis(Scale.LINEAR, 100, 400, 0, 300, 400, 20),
                    axis(Scale.LINEAR, 100, 400, 0, 300, 410, 7)));
    assertEquals("axes-run-alike", alike.problems().get(0).code());
    assertThrows(
        WrongInputException.class,
        () ->
            Axes.of(
                axis(Scale.LINEAR, Double.NaN, 400, 0, 300, 400, 20),
                axis(Scale.LINEAR, 100, 400, 0, 100, 300, 7)));
  }

  @Test
  void aTracedCurveMayBeginAtOneRiseOrBeDense() {
    Steps falls =
        found(List.of(point(0, 1), point(2, 1), point(2, 0.8), point(5, 0.8), point(5, 0.6)));
    assertEquals(0.8, falls.at(3), 1e-12);
    assertEquals(0.6, falls.at(5), 1e-12);
    assertEquals(List.of(0.0, 2.0, 5.0), falls.corners().stream().map(DataPoint::x).toList());
    Steps rises = found(List.of(point(0, 0), point(2, 0.2), point(5, 0.55)));
    assertTrue(rises.rises());
    assertEquals(0.8, rises.at(2), 1e-12);
    assertEquals(5, rises.median().orElseThrow(), 1e-12);
    Steps shaky = found(List.of(point(0, 1), point(1, 0.9), point(2, 0.915), point(3, 0.5)));
    assertEquals(1, shaky.levelled());
    assertEquals(0.9, shaky.at(2), 1e-12);
  }

  @Test
  void whatIsNoCurveIsAsked() {
    question(List.of(point(0, 1)));
    question(List.of(point(0, 100), point(3, 80)));
    question(List.of(point(0, 1), point(1, 0.5), point(2, 0.7)));
    question(List.of(point(0, 0.3), point(1, 0.2)));
    question(List.of(point(2, 1), point(4, 0.8), point(6, 0.5)));
    question(List.of(point(-3, 1), point(4, 0.8), point(6, 0.5)));
  }

  private static DataPoint point(double x, double y) {
    return new DataPoint(x, y);
  }

  private static Steps found(List<DataPoint> points) {
    return ((Steps.Found) Steps.of(points)).steps();
  }

  private static void question(List<DataPoint> points) {
    assertTrue(Steps.of(points) instanceof Steps.Question, points.toString());
  }
}
