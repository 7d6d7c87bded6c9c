package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines in the area of a figure put together to curves, whether each was drawn in one go or step by
 * step; short strokes across a curve are set apart, since they mark patients last seen.
 *
 * @param curves from the first drawn on
 * @param samples short level strokes away from every curve, as beside the words of a key
 */
record DrawnCurves(List<Curve> curves, List<DrawnPath> samples) {
  /** Ends that touch, points. */
  private static final double TOUCH = 0.7;

  /** Short strokes are marks, not parts of a curve. */
  private static final double LONGEST_MARK = 12;

  private static final int MOST_PIECES = 20_000;

  /**
   * A curve.
   *
   * @param points along it, from left to right
   * @param look a path that it was drawn with
   * @param marks places of strokes across it
   */
  record Curve(List<Point> points, DrawnPath look, List<Point> marks) {
    double width() {
      return points.get(points.size() - 1).x() - points.get(0).x();
    }

    /** Whether it consists of level and upright pieces. */
    boolean isStepped() {
      int aslant = 0;
      for (int i = 1; i < points.size(); i++) {
        double x = Math.abs(points.get(i).x() - points.get(i - 1).x());
        double y = Math.abs(points.get(i).y() - points.get(i - 1).y());
        aslant += x > 0.3 && y > 0.3 ? 1 : 0;
      }
      return aslant * 10 <= points.size();
    }
  }

  static DrawnCurves in(PlotArea area) {
    Box box = area.box().grown(3);
    List<DrawnPath> pieces = new ArrayList<>();
    for (DrawnPath path : area.page().paths()) {
      if (!path.filled() && !path.curved() && isInside(path, box) && !isFrame(path, area.box())) {
        pieces.add(path);
      }
    }
    if (pieces.size() > MOST_PIECES) {
      return new DrawnCurves(List.of(), List.of());
    }
    List<DrawnPath> chains = chained(Dashes.joined(pieces));
    List<Curve> curves = new ArrayList<>();
    for (DrawnPath chain : chains) {
      List<Point> ordered = rightwards(chain.points());
      if (!ordered.isEmpty() && isCurve(ordered, area.box())) {
        curves.add(new Curve(ordered, chain, List.of()));
      }
    }
    return new DrawnCurves(marked(curves, chains), samples(curves, chains));
  }

  private static boolean isInside(DrawnPath path, Box box) {
    return path.points().stream().allMatch(p -> box.holds(p.x(), p.y()));
  }

  /**
   * Axes and grid lines: straight over the whole area, or round it, or along its left and bottom. A
   * curve that never falls runs along the top, so a level line there is none.
   */
  private static boolean isFrame(DrawnPath path, Box area) {
    Box box = path.box();
    boolean across = box.height() < 0.3 && box.width() > 0.97 * area.width();
    boolean down = box.width() < 0.3 && box.height() > 0.97 * area.height();
    double bottom = area.bottom() - 1;
    return down
        || across && path.points().get(0).y() > bottom
        || !across && path.points().stream().allMatch(point -> isEdge(point, area));
  }

  private static boolean isEdge(Point point, Box area) {
    boolean corner =
        Math.min(Math.abs(point.x() - area.left()), Math.abs(point.x() - area.right())) < 1;
    return corner
        && Math.min(Math.abs(point.y() - area.top()), Math.abs(point.y() - area.bottom())) < 1;
  }

  private static List<DrawnPath> chained(List<DrawnPath> pieces) {
    List<DrawnPath> chains = new ArrayList<>();
    for (DrawnPath piece : pieces) {
      gapwise.budget.Work.check();
      int last = chains.size() - 1;
      int at = -1;
      for (int i = last; i >= Math.max(0, last - 400) && at < 0; i--) {
        if (chains.get(i).looksLike(piece)
            && Math.abs(chains.get(i).width() - piece.width()) < 0.05
            && touches(end(chains.get(i)), piece.points().get(0))) {
          at = i;
        }
      }
      if (at < 0) {
        chains.add(piece);
      } else {
        List<Point> points = new ArrayList<>(chains.get(at).points());
        points.addAll(piece.points());
        chains.set(
            at, new DrawnPath(points, false, piece.colour(), piece.width(), piece.dashes(), false));
      }
    }
    return chains;
  }

  private static Point end(DrawnPath path) {
    return path.points().get(path.points().size() - 1);
  }

  private static boolean touches(Point a, Point b) {
    return Math.abs(a.x() - b.x()) < TOUCH && Math.abs(a.y() - b.y()) < TOUCH;
  }

  /** The points from left to right; empty if the line turns back. */
  private static List<Point> rightwards(List<Point> points) {
    List<Point> ordered = new ArrayList<>(points);
    if (ordered.get(0).x() > ordered.get(ordered.size() - 1).x()) {
      java.util.Collections.reverse(ordered);
    }
    for (int i = 1; i < ordered.size(); i++) {
      if (ordered.get(i).x() < ordered.get(i - 1).x() - 0.3) {
        return List.of();
      }
    }
    return ordered;
  }

  /** A line over a good part of the area that only falls or only rises. */
  private static boolean isCurve(List<Point> points, Box area) {
    double width = points.get(points.size() - 1).x() - points.get(0).x();
    boolean falls = false;
    boolean rises = false;
    for (int i = 1; i < points.size(); i++) {
      double down = points.get(i).y() - points.get(i - 1).y();
      falls |= down > 0.6;
      rises |= down < -0.6;
    }
    boolean begins = points.get(0).x() - area.left() < 0.12 * area.width();
    return begins && width > 0.2 * area.width() && points.size() > 2 && falls != rises;
  }

  private static List<Curve> marked(List<Curve> curves, List<DrawnPath> chains) {
    List<Curve> marked = new ArrayList<>();
    for (Curve curve : curves) {
      List<Point> marks = new ArrayList<>();
      for (DrawnPath stroke : chains) {
        Box box = stroke.box();
        boolean small =
            box.height() <= LONGEST_MARK && box.height() > 1.2 && box.width() < LONGEST_MARK;
        if (small && stroke.colour() == curve.look().colour() && isOn(curve, box)) {
          boolean known = marks.stream().anyMatch(m -> Math.abs(m.x() - box.middle()) < 0.2);
          if (!known) {
            marks.add(new Point(box.middle(), box.centre()));
          }
        }
      }
      marks.sort(java.util.Comparator.comparingDouble(Point::x));
      marked.add(new Curve(curve.points(), curve.look(), marks));
    }
    return marked;
  }

  private static boolean isOn(Curve curve, Box mark) {
    for (int i = 1; i < curve.points().size(); i++) {
      Point a = curve.points().get(i - 1);
      Point b = curve.points().get(i);
      boolean level = Math.abs(a.y() - b.y()) < 0.3;
      if (level
          && mark.middle() > a.x() - 0.4
          && mark.middle() < b.x() + 0.4
          && Math.abs(mark.centre() - a.y()) < Math.max(1.2, 0.6 * mark.height())) {
        return true;
      }
    }
    return false;
  }

  private static List<DrawnPath> samples(List<Curve> curves, List<DrawnPath> chains) {
    List<DrawnPath> samples = new ArrayList<>();
    for (DrawnPath chain : chains) {
      Box box = chain.box();
      boolean level = box.height() < 0.5 && box.width() >= 6 && box.width() < 60;
      if (level && curves.stream().noneMatch(c -> c.look() == chain)) {
        samples.add(chain);
      }
    }
    return samples;
  }
}
