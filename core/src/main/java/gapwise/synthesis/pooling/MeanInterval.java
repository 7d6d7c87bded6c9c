package gapwise.synthesis.pooling;

/** A way of making an interval and a test for a pooled mean. Listed in {@link MeanIntervals}. */
public interface MeanInterval {
  /** The word in a plan. */
  String name();

  /** Its name for people: "Hartung-Knapp interval". */
  String label();

  /**
   * The interval.
   *
   * @param mean of at least two studies
   * @param level above 0 and below 1
   */
  PooledMean around(WeightedMean mean, double level);

  /** Whether the limits are the same whatever tau squared the mean was weighted with. */
  default boolean ignoresTauSquared() {
    return false;
  }
}
