package gapwise.desk;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axes;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.DataPoint;
import gapwise.paper.trace.Scale;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Points of a figure as numbers on its axes and as places on its picture. Numbers stand here as
 * they are printed beside the axes: 50 for 50 % on an axis of percentages.
 */
public final class FigurePoints {
  /** Points that lie outside are named one by one up to so many; the others are alike. */
  private static final int MOST_NAMED = 5;

  private FigurePoints() {}

  /** Numbers as printed beside the axes, out of what the axes read. */
  public static DataPoint printed(Axes axes, DataPoint read) {
    return new DataPoint(read.x() * factor(axes.x()), read.y() * factor(axes.y()));
  }

  /** What axes read, out of the numbers as printed beside them. */
  public static DataPoint read(Axes axes, DataPoint printed) {
    return new DataPoint(printed.x() / factor(axes.x()), printed.y() / factor(axes.y()));
  }

  private static int factor(Axis axis) {
    return axis.scale() == Scale.PERCENT ? 100 : 1;
  }

  /**
   * Where points lie on the picture.
   *
   * @param printed numbers as printed beside the axes
   * @param picture the whole picture
   * @throws WrongInputException for points that lie on no place of the picture
   */
  public static List<Point> places(Axes axes, List<DataPoint> printed, Box picture) {
    List<Problem> problems = new ArrayList<>();
    List<Point> places = new ArrayList<>();
    for (int at = 0; at < printed.size(); at++) {
      DataPoint point = printed.get(at);
      Point place = axes.placeOf(read(axes, point));
      if (picture.holds(place.x(), place.y())) {
        places.add(place);
      } else if (problems.size() < MOST_NAMED) {
        problems.add(outside(axes, at + 1, point));
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems);
    }
    return List.copyOf(places);
  }

  private static Problem outside(Axes axes, int number, DataPoint point) {
    String what = "Point " + number + " (" + plain(point.x()) + ", " + plain(point.y()) + ") ";
    boolean never =
        axes.x().scale() == Scale.LOG && point.x() <= 0
            || axes.y().scale() == Scale.LOG && point.y() <= 0;
    return never
        ? new Problem(
            "points",
            "log-not-positive",
            what + "has no place on a logarithmic axis, which has only numbers above 0. Mend it.")
        : new Problem(
            "points",
            "outside-picture",
            what + "lies outside the picture. Mend it, or the marks of the axes.");
  }

  /**
   * A number read off along an axis, with no more decimals than the picture tells.
   *
   * @param axes the axes
   * @param level whether it is read along x
   * @param value as printed beside the axis
   * @param at the place it was read at
   * @param finest what a place is exact to, points; the last decimal is no finer
   */
  static String rounded(Axes axes, boolean level, double value, Point at, double finest) {
    if (!Double.isFinite(value)) {
      return plain(value);
    }
    Axis axis = level ? axes.x() : axes.y();
    double wide = axis.second().at().x() - axis.first().at().x();
    double high = axis.second().at().y() - axis.first().at().y();
    double length = Math.hypot(wide, high);
    Point beside = new Point(at.x() + finest * wide / length, at.y() + finest * high / length);
    DataPoint next = printed(axes, axes.at(beside));
    DataPoint here = printed(axes, axes.at(at));
    double step = Math.abs(level ? next.x() - here.x() : next.y() - here.y());
    int decimals =
        step > 0 && Double.isFinite(step) ? (int) Math.max(0, Math.floor(-Math.log10(step))) : 2;
    return plain(BigDecimal.valueOf(value).setScale(Math.min(decimals, 8), RoundingMode.HALF_UP));
  }

  /**
   * Fewer points for the same line: those that lie on the way between others are left out.
   *
   * @param line in the order of the line
   * @param off how far the line may be from where it was, points; more where it still has more than
   *     {@link FigureMarks#MOST_POINTS}
   */
  public static List<Point> thinned(List<Point> line, double off) {
    boolean[] kept = new boolean[line.size()];
    Deque<int[]> stretches = new ArrayDeque<>();
    if (!line.isEmpty()) {
      kept[0] = true;
      kept[line.size() - 1] = true;
      stretches.push(new int[] {0, line.size() - 1});
    }
    while (!stretches.isEmpty()) {
      int[] stretch = stretches.pop();
      int farthest = farthest(line, stretch[0], stretch[1], off);
      if (farthest > 0) {
        kept[farthest] = true;
        stretches.push(new int[] {stretch[0], farthest});
        stretches.push(new int[] {farthest, stretch[1]});
      }
    }
    List<Point> thinned =
        IntStream.range(0, line.size()).filter(at -> kept[at]).mapToObj(line::get).toList();
    return thinned.size() > FigureMarks.MOST_POINTS ? thinned(thinned, off * 2) : thinned;
  }

  /** The point between two that is farthest from the way between them; 0 where all are near. */
  private static int farthest(List<Point> line, int from, int to, double off) {
    Point a = line.get(from);
    Point b = line.get(to);
    double length = Math.max(1e-9, Math.hypot(b.x() - a.x(), b.y() - a.y()));
    int farthest = 0;
    double most = off;
    for (int at = from + 1; at < to; at++) {
      Point p = line.get(at);
      double away =
          Math.abs((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x())) / length;
      if (away > most) {
        most = away;
        farthest = at;
      }
    }
    return farthest;
  }

  /** A number as people write it, without an exponent. */
  public static String plain(double value) {
    return Double.isFinite(value)
        ? plain(new BigDecimal(value).setScale(8, RoundingMode.HALF_UP))
        : "no number";
  }

  private static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
