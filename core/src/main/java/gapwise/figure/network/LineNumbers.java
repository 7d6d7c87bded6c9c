package gapwise.figure.network;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Svg;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * How many studies compare each pair, a number on each line: off treatments and other numbers, and
 * off other lines if that can be.
 *
 * @param spots of all treatments by name
 */
record LineNumbers(
    List<NetworkGraph.Edge> edges, Map<String, NetworkSpot> spots, Lettering lettering) {
  /** Steps from the middle of a line at which its number may stand, to either side. */
  private static final int STEPS = 24;

  private static final double STEP = 0.0155;

  private record Box(double left, double top, double right, double bottom) {
    static Box round(double x, double y, double wide, double tall) {
      return new Box(x - wide, y - tall, x + wide, y + tall);
    }

    boolean overlaps(Box other) {
      return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    /** Whether the stretch from one spot to another passes through. */
    boolean isCrossed(NetworkSpot one, NetworkSpot other) {
      double[] across = shares(one.x(), other.x(), left, right);
      double[] down = shares(one.y(), other.y(), top, bottom);
      return Math.max(across[0], down[0]) <= Math.min(across[1], down[1]);
    }

    /** The first and last share of the way, from 0 to 1, at which one coordinate is within. */
    private static double[] shares(double from, double to, double least, double most) {
      if (from == to) {
        boolean within = least <= from && from <= most;
        return within ? new double[] {0, 1} : new double[] {1, 0};
      }
      double one = (least - from) / (to - from);
      double other = (most - from) / (to - from);
      return new double[] {Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))};
    }
  }

  void draw(Svg svg) {
    List<Box> taken = new ArrayList<>();
    for (NetworkSpot spot : spots.values()) {
      double r = spot.radius() + 2;
      taken.add(new Box(spot.x() - r, spot.y() - r, spot.x() + r, spot.y() + r));
    }
    for (NetworkGraph.Edge edge : edges) {
      String number = Integer.toString(edge.studies());
      double wide = lettering.width(number) / 2 + 2.5;
      double tall = lettering.size() * 0.56;
      Box box = place(edge, wide, tall, taken);
      taken.add(box);
      svg.rect(box.left(), box.top(), 2 * wide, 2 * tall, Ink.GROUND);
      double baseline = (box.top() + box.bottom()) / 2 + lettering.middleToBaseline();
      svg.text((box.left() + box.right()) / 2, baseline, Svg.Anchor.MIDDLE, lettering, number);
    }
  }

  /** Where the number of a line stands: near its middle, off other lines if that can be. */
  private Box place(NetworkGraph.Edge edge, double wide, double tall, List<Box> taken) {
    NetworkSpot one = spot(edge.one());
    NetworkSpot other = spot(edge.other());
    List<Box> along =
        IntStream.rangeClosed(0, 2 * STEPS)
            .mapToDouble(i -> 0.5 + (i % 2 == 0 ? -1 : 1) * ((i + 1) / 2) * STEP)
            .mapToObj(
                share ->
                    Box.round(
                        one.x() + share * (other.x() - one.x()),
                        one.y() + share * (other.y() - one.y()),
                        wide,
                        tall))
            .toList();
    List<Box> free = along.stream().filter(box -> taken.stream().noneMatch(box::overlaps)).toList();
    return free.stream()
        .filter(box -> !onOtherLine(box, edge))
        .findFirst()
        .or(() -> free.stream().findFirst())
        .orElse(along.get(0));
  }

  private NetworkSpot spot(String treatment) {
    return Objects.requireNonNull(spots.get(treatment), treatment);
  }

  /** Whether another line runs through the box, so that its number could be read as that line's. */
  private boolean onOtherLine(Box box, NetworkGraph.Edge own) {
    return edges.stream()
        .filter(edge -> !edge.equals(own))
        .anyMatch(edge -> box.isCrossed(spot(edge.one()), spot(edge.other())));
  }
}
