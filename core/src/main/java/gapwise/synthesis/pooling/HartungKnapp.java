package gapwise.synthesis.pooling;

import gapwise.numeric.ReferenceDistribution;

/**
 * Standard error times the root of q, t on k - p, q not cut at 1: Hartung and Knapp, Stat Med
 * 2001;20:3875; Sidik and Jonkman, Stat Med 2002;21:3153.
 */
final class HartungKnapp implements MeanInterval {
  @Override
  public String name() {
    return "hartung-knapp";
  }

  @Override
  public String label() {
    return "Hartung-Knapp interval";
  }

  @Override
  public PooledMean around(WeightedMean mean, double level) {
    return PooledMean.symmetric(
        mean.estimate(),
        mean.hartungKnappStandardError(),
        ReferenceDistribution.studentT(mean.residualDegreesOfFreedom()),
        level);
  }
}
