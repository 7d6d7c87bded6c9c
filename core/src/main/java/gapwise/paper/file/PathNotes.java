package gapwise.paper.file;

import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Guard;
import gapwise.paper.Refused;
import java.util.ArrayList;
import java.util.List;

/** Notes the lines of a page while it is drawn. */
final class PathNotes {
  private final Guard guard;
  private final List<DrawnPath> paths = new ArrayList<>();
  private final List<List<Point>> parts = new ArrayList<>();
  private boolean curved;
  private int count;

  PathNotes(Guard guard) {
    this.guard = guard;
  }

  List<DrawnPath> paths() {
    return paths;
  }

  boolean hasPoint() {
    return !parts.isEmpty();
  }

  void moveTo(Point point) {
    List<Point> part = new ArrayList<>();
    parts.add(part);
    add(part, point);
  }

  void lineTo(Point point) {
    if (parts.isEmpty()) {
      moveTo(point);
    } else {
      add(parts.get(parts.size() - 1), point);
    }
  }

  void bendTo(Point point) {
    curved = true;
    lineTo(point);
  }

  void close() {
    if (hasPoint() && !parts.get(parts.size() - 1).isEmpty()) {
      lineTo(parts.get(parts.size() - 1).get(0));
    }
  }

  private void add(List<Point> part, Point point) {
    guard.tick();
    if (++count > guard.caps().pathPoints()) {
      throw new Guard.StoppedException(
          Refused.tooMuch("lines with more than " + guard.caps().pathPoints() + " corners"));
    }
    if (Double.isFinite(point.x() + point.y())) {
      part.add(point);
    }
  }

  void keep(boolean filled, int colour, double width, List<Double> dashes) {
    for (List<Point> part : parts) {
      if (part.size() > 1) {
        paths.add(new DrawnPath(part, filled, colour, width, dashes, curved));
      }
    }
    forget();
  }

  void forget() {
    parts.clear();
    curved = false;
  }
}
