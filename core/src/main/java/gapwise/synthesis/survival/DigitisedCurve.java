package gapwise.synthesis.survival;

import java.util.ArrayList;
import java.util.List;

/**
 * A survival curve as it was read off a figure: its height just after each time, falling or level.
 * Immutable.
 */
public final class DigitisedCurve {
  private final List<Point> points;

  /**
   * A place on the curve.
   *
   * @param time at least 0
   * @param survival share without the event, 0 to 1
   */
  public record Point(double time, double survival) {
    public Point {
      if (!(time >= 0 && Double.isFinite(time) && survival >= 0 && survival <= 1)) {
        throw new IllegalArgumentException("no point of a curve: " + survival + " at " + time);
      }
    }
  }

  private DigitisedCurve(List<Point> points) {
    this.points = points;
  }

  /**
   * A curve. Of several points at one time, as where a step was traced down, the last counts.
   *
   * @param points at least one; times in order, survival never rising
   */
  public static DigitisedCurve of(List<Point> points) {
    List<Point> kept = new ArrayList<>();
    for (Point point : points) {
      if (!kept.isEmpty()) {
        Point before = kept.get(kept.size() - 1);
        if (point.time() < before.time() || point.survival() > before.survival()) {
          throw new IllegalArgumentException("the curve goes back: " + before + ", " + point);
        }
        if (point.time() == before.time()) {
          kept.remove(kept.size() - 1);
        }
      }
      kept.add(point);
    }
    if (kept.isEmpty()) {
      throw new IllegalArgumentException("a curve needs at least one point");
    }
    return new DigitisedCurve(List.copyOf(kept));
  }

  /** The points, one a time. */
  public List<Point> points() {
    return points;
  }

  /** The last time read. */
  public double end() {
    return points.get(points.size() - 1).time();
  }
}
