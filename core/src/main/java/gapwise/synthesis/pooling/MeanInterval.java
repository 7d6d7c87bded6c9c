package gapwise.synthesis.pooling;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.Optional;

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

  /**
   * The tau squared by which the mean between the limits is weighted.
   *
   * @param estimated that of the plan's estimator
   */
  default double weightingTauSquared(EffectSample sample, double estimated) {
    return estimated;
  }

  /** What speaks against reading this interval of this mean; empty if nothing does. */
  default Optional<Problem> caution(WeightedMean mean, double level) {
    return Optional.empty();
  }

  /** Whether the mean and its limits are the same whatever tau squared it was weighted with. */
  default boolean ignoresTauSquared() {
    return false;
  }
}
