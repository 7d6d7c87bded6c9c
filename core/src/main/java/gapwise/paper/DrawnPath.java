package gapwise.paper;

import java.util.List;

/**
 * A line drawn on a page, with all its corners.
 *
 * @param points at least two
 * @param filled whether an area was filled rather than a line drawn
 * @param colour red, green and blue as 0xRRGGBB
 * @param width of the stroke, points
 * @param dashes lengths of dashes and gaps, empty for a whole line
 * @param curved whether it bends between corners; its corners then only hint at it
 */
public record DrawnPath(
    List<Point> points,
    boolean filled,
    int colour,
    double width,
    List<Double> dashes,
    boolean curved) {
  /** A place on the page, points from the top left corner. */
  public record Point(double x, double y) {}

  public DrawnPath {
    points = List.copyOf(points);
    dashes = List.copyOf(dashes);
    if (points.size() < 2) {
      throw new IllegalArgumentException("a drawn line needs two points");
    }
  }

  /** The box around its corners. */
  public Box box() {
    Box all = null;
    for (Point point : points) {
      Box one = new Box(point.x(), point.y(), point.x(), point.y());
      all = all == null ? one : all.with(one);
    }
    return java.util.Objects.requireNonNull(all, "box");
  }

  /** Whether it was drawn in the same manner as another, so that both belong to one group. */
  public boolean looksLike(DrawnPath other) {
    return colour == other.colour && dashes.equals(other.dashes);
  }
}
