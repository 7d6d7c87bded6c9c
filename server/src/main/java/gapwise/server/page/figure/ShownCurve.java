package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.CurveIntoDraft;
import gapwise.desk.CurveMade;
import gapwise.desk.CurveOf;
import gapwise.desk.FigureMarks;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.DataPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A rebuilt curve, as it is shown over the picture and told beside it. */
final class ShownCurve {
  private ShownCurve() {}

  /** What the points along a curve make. */
  static CurveMade made(FigureMarks marks, CurveOf of) {
    return CurveMade.of(marks.axes().rows(marks.points()), of.withEvent(), of.reported());
  }

  static MadeView.Curve of(FigureMarks marks, CurveOf of, CurveMade.Made made, String mark) {
    List<String> sentences = new ArrayList<>(made.rebuilt().sentences());
    if (of.withEvent()) {
      sentences.add(say("figure.turned-round"));
    }
    if (made.steps().levelled() > 0) {
      sentences.add(say("figure.levelled", Map.of("points", made.steps().levelled())));
    }
    return new MadeView.Curve(
        outline(marks.axes(), of.withEvent(), made),
        sentences,
        CurveIntoDraft.rows(marks, of, made.steps()).size(),
        mark);
  }

  private static String outline(Axes axes, boolean withEvent, CurveMade.Made made) {
    return made.rebuilt().outline().stream()
        .map(corner -> new DataPoint(corner.x(), withEvent ? 1 - corner.y() : corner.y()))
        .map(axes::placeOf)
        .filter(place -> Double.isFinite(place.x() + place.y()))
        .map(ShownCurve::written)
        .collect(Collectors.joining(" "));
  }

  private static String written(Point place) {
    return Math.rint(place.x() * 100) / 100 + "," + Math.rint(place.y() * 100) / 100;
  }
}
