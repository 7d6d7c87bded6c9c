package gapwise.synthesis.multiverse;

/**
 * Shares, from 0 to 1, of the analyses with a pooled value on each side of a value as people read
 * it, families of models weighing alike.
 *
 * @param below pooled values below it
 * @param above pooled values above it; the rest equal it
 * @param intervalsBelow intervals that end below it
 * @param intervalsAbove intervals that begin above it; the rest include it
 */
public record SideShares(double below, double above, double intervalsBelow, double intervalsAbove) {
  /** Intervals that include the value. */
  public double intervalsIncluding() {
    return Math.max(0, 1 - intervalsBelow - intervalsAbove);
  }
}
