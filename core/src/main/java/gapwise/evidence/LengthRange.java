package gapwise.evidence;

/**
 * A stretch of lengths.
 *
 * @param fromCentimetres shortest, 0 or more
 * @param toCentimetres longest, not less than the shortest; infinite when open
 */
public record LengthRange(double fromCentimetres, double toCentimetres) {
  public LengthRange {
    if (!(fromCentimetres >= 0) || !(toCentimetres >= fromCentimetres)) {
      throw new IllegalArgumentException(
          "a range of length must run upwards from 0, was "
              + fromCentimetres
              + " to "
              + toCentimetres);
    }
  }

  /** From a length upwards without end. */
  public static LengthRange from(double centimetres) {
    return new LengthRange(centimetres, Double.POSITIVE_INFINITY);
  }

  /** Whether two ranges share a length; touching ends count. */
  public boolean overlaps(LengthRange other) {
    return fromCentimetres <= other.toCentimetres && other.fromCentimetres <= toCentimetres;
  }

  public boolean contains(double centimetres) {
    return centimetres >= fromCentimetres && centimetres <= toCentimetres;
  }
}
