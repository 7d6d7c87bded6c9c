package gapwise.server.page.figure;

import gapwise.desk.DraftCurve;
import gapwise.desk.FigureMarks;
import gapwise.desk.FigurePoints;
import gapwise.paper.trace.AtRiskRow;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.DataPoint;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Numbers as the fields of the page hold them. */
final class TypedTexts {
  /** Far finer than any picture, and short enough to be read. */
  private static final double DECIMALS = 10_000;

  private TypedTexts() {}

  static String number(double value) {
    return FigurePoints.plain(Math.rint(value * DECIMALS) / DECIMALS);
  }

  static String point(DataPoint printed) {
    return number(printed.x()) + " " + number(printed.y());
  }

  static String risk(AtRiskRow row) {
    List<String> lines = new ArrayList<>();
    for (int at = 0; at < row.times().size(); at++) {
      lines.add(number(row.times().get(at)) + " " + row.patients().get(at));
    }
    return String.join("\n", lines);
  }

  /** The fields of another curve of the same figure: its axes stand already. */
  static Map<String, String> beside(DraftCurve curve, FigureMarks marks) {
    Map<String, String> texts = new LinkedHashMap<>(of(curve, marks));
    for (String own :
        List.of("block", "points", "arm", "patients", "events", "median", "risk", "strokes")) {
      texts.put(own, "");
    }
    return texts;
  }

  /** The fields of a curve that stands in the draft, to be mended. */
  static Map<String, String> of(DraftCurve curve, FigureMarks marks) {
    Map<String, String> texts = new LinkedHashMap<>();
    FigureMarks.Source source = marks.source();
    texts.put("block", Integer.toString(curve.block()));
    texts.put("image", source.image() ? source.file() : "");
    texts.put("paper", source.image() ? "" : source.file());
    texts.put("page", source.image() ? "" : Integer.toString(source.page()));
    texts.put("kind", FigureFields.CURVE);
    texts.put("arm", curve.arm());
    texts.put("outcome", curve.outcome());
    texts.put("unit", curve.timeUnit());
    texts.put("shows", curve.withEvent() ? "with-event" : "without-event");
    texts.put("patients", curve.patients());
    texts.put("events", curve.events());
    texts.put("median", curve.median());
    texts.put("place", curve.place());
    texts.put("risk", String.join("\n", curve.atRisk()));
    texts.put("strokes", String.join(" ", curve.lastSeen()));
    try {
      Axes axes = marks.axes();
      texts.putAll(Proposals.axes(axes));
      texts.put("points", Proposals.lines(axes, marks.points()));
    } catch (WrongInputException changedByHand) {
      // The points then stand as they do in the rows, and the axes are to be marked again.
      texts.put("points", String.join("\n", curve.shares()));
    }
    return texts;
  }
}
