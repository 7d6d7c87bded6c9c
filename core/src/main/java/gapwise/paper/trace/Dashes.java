package gapwise.paper.trace;

import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts broken lines together that a file holds dash by dash, as some programs write them: short
 * pieces drawn alike one after the other, each going on where the last one left off.
 */
final class Dashes {
  /** Dashes and the gaps between them are no longer, points. */
  private static final double LONGEST_DASH = 16;

  private static final double LONGEST_GAP = 7;

  /** Fewer pieces are strokes by themselves. */
  private static final int FEWEST = 3;

  /** Stands for the lengths of dashes and gaps, which vary at corners. */
  private static final List<Double> BROKEN = List.of(1.0, 1.0);

  private Dashes() {}

  static List<DrawnPath> joined(List<DrawnPath> pieces) {
    List<DrawnPath> joined = new ArrayList<>();
    List<DrawnPath> run = new ArrayList<>();
    for (DrawnPath piece : pieces) {
      if (!run.isEmpty() && !goesOn(run.get(run.size() - 1), piece)) {
        end(run, joined);
      }
      run.add(piece);
    }
    end(run, joined);
    return joined;
  }

  private static void end(List<DrawnPath> run, List<DrawnPath> joined) {
    if (run.size() < FEWEST) {
      joined.addAll(run);
    } else {
      DrawnPath first = run.get(0);
      List<Point> points = new ArrayList<>(first.points());
      for (DrawnPath piece : run.subList(1, run.size())) {
        Point from = points.get(points.size() - 1);
        Point to = piece.points().get(0);
        boolean corner = Math.abs(from.x() - to.x()) > 0.3 && Math.abs(from.y() - to.y()) > 0.3;
        if (corner) {
          boolean level = Math.abs(from.y() - points.get(points.size() - 2).y()) < 0.3;
          points.add(level ? new Point(to.x(), from.y()) : new Point(from.x(), to.y()));
        }
        points.addAll(piece.points());
      }
      joined.add(new DrawnPath(points, false, first.colour(), first.width(), BROKEN, false));
    }
    run.clear();
  }

  private static boolean goesOn(DrawnPath before, DrawnPath next) {
    List<Point> a = before.points();
    List<Point> b = next.points();
    Point from = a.get(a.size() - 1);
    Point to = b.get(0);
    double x = to.x() - from.x();
    double y = to.y() - from.y();
    double gap = Math.hypot(x, y);
    if (!before.looksLike(next) || !isShort(before) || !isShort(next) || gap > LONGEST_GAP) {
      return false;
    }
    boolean leaves = isLevel(a.get(a.size() - 2), from);
    boolean enters = isLevel(to, b.get(1));
    boolean straight = leaves == enters && Math.abs(leaves ? y : x) < 0.4 && gap > 0.5;
    boolean turns = leaves != enters && x > -0.4;
    // A dash may hold a whole step, so that it leaves and enters the same way.
    boolean over = leaves == enters && x > -0.4 && (a.size() > 2 || b.size() > 2);
    return straight || turns || over;
  }

  private static boolean isShort(DrawnPath path) {
    return path.box().width() + path.box().height() <= LONGEST_DASH;
  }

  private static boolean isLevel(Point a, Point b) {
    return Math.abs(a.y() - b.y()) <= Math.abs(a.x() - b.x());
  }
}
