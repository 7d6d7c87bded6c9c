package gapwise.evidence.unit;

import java.math.BigDecimal;

/**
 * A stretch of lengths.
 *
 * @param fromCentimetres shortest, 0 or more
 * @param toCentimetres longest, not less than the shortest; infinite when open
 */
public record LengthRange(double fromCentimetres, double toCentimetres) {
  private static final BigDecimal JUST_UNDER = new BigDecimal("0.000001");

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

  /**
   * From a length, included, to one that is not: a plan then reads 3.999999 and not sixteen digits.
   * No paper gives a length to the hundredth of a micrometre, so nothing lies between.
   */
  public static LengthRange under(double from, double to) {
    double end = BigDecimal.valueOf(to).subtract(JUST_UNDER).doubleValue();
    return new LengthRange(from, Math.max(from, end));
  }

  /** Whether two ranges share a length; touching ends count. */
  public boolean overlaps(LengthRange other) {
    return fromCentimetres <= other.toCentimetres && other.fromCentimetres <= toCentimetres;
  }

  /** Whether every length of another range is in this one. */
  public boolean holds(LengthRange other) {
    return fromCentimetres <= other.fromCentimetres && other.toCentimetres <= toCentimetres;
  }

  public boolean contains(double centimetres) {
    return centimetres >= fromCentimetres && centimetres <= toCentimetres;
  }
}
