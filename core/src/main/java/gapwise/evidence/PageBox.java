package gapwise.evidence;

/**
 * A box on a page of a paper, in points of 1/72 inch from the top left corner of the page as it is
 * displayed; kept to a hundredth of a point.
 *
 * @param left 0 or more
 * @param top 0 or more
 * @param right more than left
 * @param bottom more than top
 */
public record PageBox(double left, double top, double right, double bottom) {
  /** The largest side of a page that a PDF may have (ISO 32000-1, annex C: 14,400 units). */
  public static final double LARGEST = 14_400;

  private static final double HUNDREDTHS = 100;

  public PageBox {
    left = rounded(left);
    top = rounded(top);
    right = rounded(right);
    bottom = rounded(bottom);
    if (!(left >= 0 && top >= 0 && right > left && bottom > top)
        || !(right <= LARGEST && bottom <= LARGEST)) {
      throw new IllegalArgumentException(
          "a box runs from left to right and from top to bottom, within 0 and "
              + LARGEST
              + ", was "
              + left
              + " "
              + top
              + " "
              + right
              + " "
              + bottom);
    }
  }

  private static double rounded(double points) {
    return Double.isFinite(points) ? Math.rint(points * HUNDREDTHS) / HUNDREDTHS : points;
  }
}
