package gapwise.desk;

import gapwise.exchange.Template;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Steps;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Writes a curve that was read off a figure into the rows of a draft: one for each point, one for
 * each number at risk, one for each time at which patients were last seen. What the paper prints of
 * the curve as a whole, and the marks on the picture, stand in the first.
 */
public final class CurveIntoDraft {
  static final String TIME = "time";
  static final String TIME_UNIT = "time_unit";
  static final String SHOWS = "shows";
  static final String SHARE = "share";
  static final String AT_RISK = "at_risk";
  static final String LAST_SEEN = "last_seen";
  static final String PATIENTS = "patients";
  static final String EVENTS = "events";
  static final String MEDIAN = "median";
  static final String MARKS = "marks";
  static final String PLACE = "place";
  static final String WITH_EVENT = "with-event";
  static final String WITHOUT_EVENT = "without-event";

  /** What the corners of a line are exact to that a page is drawn with, points. */
  private static final double FINEST = 0.005;

  private static final double PERCENT = 100;

  private final FigureMarks marks;
  private final Axes axes;
  private final CurveOf of;
  private final List<Map<String, String>> rows = new ArrayList<>();

  private CurveIntoDraft(FigureMarks marks, CurveOf of) {
    this.marks = marks;
    this.axes = marks.axes();
    this.of = of;
  }

  /**
   * The draft with a curve.
   *
   * @param steps the curve as it was read, shares without the event
   * @param instead block of a curve that this one takes the place of; 0 for none
   */
  public static Draft take(Draft draft, FigureMarks marks, CurveOf of, Steps steps, int instead) {
    return draft
        .withoutBlock(instead)
        .withRows(
            Template.CURVES,
            true,
            rows(marks, of, steps),
            List.of(Map.of(SHARE, marks.reading(SHARE, of.place()))));
  }

  /** The cells of its rows. */
  public static List<Map<String, String>> rows(FigureMarks marks, CurveOf of, Steps steps) {
    CurveIntoDraft into = new CurveIntoDraft(marks, of);
    into.points(steps);
    into.atRisk();
    into.lastSeen();
    into.whole();
    return into.rows;
  }

  private void points(Steps steps) {
    List<DataPoint> corners = steps.corners();
    for (int at = 0; at < corners.size(); at++) {
      DataPoint corner = corners.get(at);
      // A point as high as the one before says nothing, but for the last, which ends the curve.
      boolean level = at > 0 && corner.y() == corners.get(at - 1).y();
      if (!level || at == corners.size() - 1) {
        double share = of.withEvent() ? 1 - corner.y() : corner.y();
        Map<String, String> row = row(corner.x());
        row.put(SHARE, FigurePoints.plain(Math.rint(share * PERCENT * 100) / 100));
        rows.add(row);
      }
    }
  }

  private void atRisk() {
    for (int at = 0; at < of.reported().times().size(); at++) {
      Map<String, String> row = named(FigurePoints.plain(of.reported().times().get(at)));
      row.put(AT_RISK, Integer.toString(of.reported().atRisk().get(at)));
      rows.add(row);
    }
  }

  private void lastSeen() {
    Map<String, Integer> counts = new LinkedHashMap<>();
    of.reported().seenLast().stream()
        .sorted()
        .forEach(time -> counts.merge(time(time), 1, Integer::sum));
    counts.forEach(
        (time, count) -> {
          Map<String, String> row = named(time);
          row.put(LAST_SEEN, Integer.toString(count));
          rows.add(row);
        });
  }

  private void whole() {
    Map<String, String> first = rows.get(0);
    first.put(PATIENTS, Integer.toString(of.reported().patients()));
    of.reported().events().ifPresent(count -> first.put(EVENTS, Integer.toString(count)));
    of.reported().median().ifPresent(time -> first.put(MEDIAN, FigurePoints.plain(time)));
    of.place().ifPresent(place -> first.put(PLACE, place));
    first.put(MARKS, marks.toJson());
  }

  private Map<String, String> row(double time) {
    return named(time(time));
  }

  private String time(double time) {
    DataPoint printed = new DataPoint(time, axes.y().first().value());
    Point at = axes.placeOf(FigurePoints.read(axes, printed));
    return FigurePoints.rounded(axes, true, time, at, FINEST);
  }

  private Map<String, String> named(String time) {
    Map<String, String> cells = new TreeMap<>();
    cells.put(Template.ARM, of.arm());
    cells.put(Template.OUTCOME, of.outcome());
    cells.put(TIME_UNIT, of.timeUnit());
    cells.put(SHOWS, of.withEvent() ? WITH_EVENT : WITHOUT_EVENT);
    cells.put(TIME, time);
    return cells;
  }

  /** The curves of a draft, in their order. */
  public static List<DraftCurve> in(Draft draft) {
    Map<Integer, List<DraftRow>> blocks = new LinkedHashMap<>();
    draft
        .rows(Template.CURVES)
        .forEach(row -> blocks.computeIfAbsent(row.block(), any -> new ArrayList<>()).add(row));
    return blocks.entrySet().stream()
        .map(block -> new DraftCurve(block.getKey(), block.getValue()))
        .toList();
  }

  /** The curve of a group and an outcome, of which there is one; empty where there is none. */
  public static Optional<DraftCurve> find(Draft draft, String arm, String outcome) {
    return in(draft).stream()
        .filter(curve -> curve.arm().equals(arm) && curve.outcome().equals(outcome))
        .findFirst();
  }

  /** One curve of a draft; empty where there is none of this block. */
  public static Optional<DraftCurve> find(Draft draft, int block) {
    return in(draft).stream().filter(curve -> curve.block() == block).findFirst();
  }
}
