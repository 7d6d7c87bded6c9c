package gapwise.synthesis.pooling;

import gapwise.numeric.ReferenceDistribution;

/**
 * As {@link HartungKnapp} with max(1, q) for q, still t on k - p: Knapp and Hartung, Stat Med
 * 2003;22:2693.
 */
final class HartungKnappNeverNarrower implements MeanInterval {
  @Override
  public String name() {
    return "hartung-knapp-never-narrower";
  }

  @Override
  public String label() {
    return "Hartung-Knapp interval, never narrower";
  }

  @Override
  public PooledMean around(WeightedMean mean, double level) {
    return PooledMean.symmetric(
        mean.estimate(),
        Math.max(mean.standardError(), mean.hartungKnappStandardError()),
        ReferenceDistribution.studentT(mean.residualDegreesOfFreedom()),
        level);
  }
}
