package gapwise.paper;

import java.util.List;

/**
 * A rectangle on a page, in points from the top left corner of the page as displayed.
 *
 * @param left to {@code right} grows to the right, {@code top} to {@code bottom} downwards; all
 *     finite
 */
public record Box(double left, double top, double right, double bottom) {
  public Box {
    if (!(Double.isFinite(left + top + right + bottom) && left <= right && top <= bottom)) {
      throw new IllegalArgumentException(
          "no box: " + left + ", " + top + ", " + right + ", " + bottom);
    }
  }

  /** The box between two corners, whichever way it was drawn. */
  public static Box between(double x1, double y1, double x2, double y2) {
    return new Box(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
  }

  /**
   * The smallest box around all.
   *
   * @param boxes at least one
   */
  public static Box around(List<Box> boxes) {
    return boxes.stream().reduce(Box::with).orElseThrow();
  }

  public double width() {
    return right - left;
  }

  public double height() {
    return bottom - top;
  }

  /** The middle from left to right. */
  public double middle() {
    return (left + right) / 2;
  }

  /** The middle from top to bottom. */
  public double centre() {
    return (top + bottom) / 2;
  }

  /** The smallest box around this and another. */
  public Box with(Box other) {
    return new Box(
        Math.min(left, other.left),
        Math.min(top, other.top),
        Math.max(right, other.right),
        Math.max(bottom, other.bottom));
  }

  /** Larger by a margin on every side. */
  public Box grown(double margin) {
    return between(left - margin, top - margin, right + margin, bottom + margin);
  }

  /** Whether a point lies in it or on its edge. */
  public boolean holds(double x, double y) {
    return x >= left && x <= right && y >= top && y <= bottom;
  }

  /** Whether the middle of another box lies in it. */
  public boolean holdsMiddleOf(Box other) {
    return holds(other.middle(), other.centre());
  }

  /** How long the shared stretch from left to right is; 0 or less if there is none. */
  public double sharedWidth(Box other) {
    return Math.min(right, other.right) - Math.max(left, other.left);
  }

  /** How long the shared stretch from top to bottom is; 0 or less if there is none. */
  public double sharedHeight(Box other) {
    return Math.min(bottom, other.bottom) - Math.max(top, other.top);
  }

  /** Whether they share an area. */
  public boolean meets(Box other) {
    return sharedWidth(other) > 0 && sharedHeight(other) > 0;
  }
}
