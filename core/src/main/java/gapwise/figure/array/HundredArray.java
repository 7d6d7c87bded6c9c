package gapwise.figure.array;

import gapwise.figure.value.Estimate;

/**
 * A share with its interval as a hundred marks: those that are filled up to the lower limit, those
 * that are hatched from there to the upper, and the rest empty; the three sum to 100.
 *
 * @param filled marks up to the lower limit, 0 to 100
 * @param hatched marks from there to the upper limit
 * @param estimate the share itself, 0 to 1
 */
public record HundredArray(int filled, int hatched, double estimate) {
  static final int HUNDRED = 100;

  public HundredArray {
    if (filled < 0 || hatched < 0 || filled + hatched > HUNDRED) {
      throw new IllegalArgumentException(
          "filled and hatched must be 0 to 100 together, were " + filled + " and " + hatched);
    }
    if (!(estimate >= 0 && estimate <= 1)) {
      throw new IllegalArgumentException("a share must lie from 0 to 1, was " + estimate);
    }
  }

  /** The marks of a share; each limit to the nearest whole mark. */
  public static HundredArray of(Estimate share) {
    int filled = (int) Math.round(share.lower() * HUNDRED);
    int upper = (int) Math.round(share.upper() * HUNDRED);
    return new HundredArray(filled, upper - filled, share.value());
  }

  /** Marks that stay empty. */
  public int empty() {
    return HUNDRED - filled - hatched;
  }
}
