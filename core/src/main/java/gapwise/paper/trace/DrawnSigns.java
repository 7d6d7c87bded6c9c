package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.DrawnPath.Point;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Small signs of one kind in the area of a figure, as the dots of a scatter. Signs that are alike
 * in colour, filling and size are one kind.
 */
final class DrawnSigns {
  private static final double LARGEST = 12;
  private static final double SMALLEST = 1;

  /** Fewer than so many are a key or an ornament. */
  private static final int FEWEST = 3;

  private DrawnSigns() {}

  static List<List<DataPoint>> in(PlotArea area, Axes axes) {
    Map<String, List<Box>> kinds = new LinkedHashMap<>();
    Box inside = area.box().grown(4);
    for (DrawnPath path : area.page().paths()) {
      Box box = path.box();
      boolean small =
          Math.max(box.width(), box.height()) <= LARGEST
              && Math.min(box.width(), box.height()) >= SMALLEST;
      boolean square = Math.abs(box.width() - box.height()) < 0.35 * box.width() + 0.5;
      if (small && square && inside.holdsMiddleOf(box)) {
        String kind =
            path.colour()
                + "/"
                + path.filled()
                + "/"
                + Math.round(box.width() * 2)
                + "/"
                + path.points().size()
                + "/"
                + path.curved();
        kinds.computeIfAbsent(kind, k -> new ArrayList<>()).add(box);
      }
    }
    List<List<DataPoint>> points = new ArrayList<>();
    for (List<Box> boxes : kinds.values()) {
      List<Box> once = new ArrayList<>();
      for (Box box : boxes) {
        boolean again =
            once.stream()
                .anyMatch(
                    o ->
                        Math.abs(o.middle() - box.middle()) < 0.02
                            && Math.abs(o.centre() - box.centre()) < 0.02);
        if (!again) {
          once.add(box);
        }
      }
      if (once.size() >= FEWEST) {
        points.add(once.stream().map(b -> axes.at(new Point(b.middle(), b.centre()))).toList());
      }
    }
    return points;
  }
}
