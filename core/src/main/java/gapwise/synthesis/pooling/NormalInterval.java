package gapwise.synthesis.pooling;

import gapwise.numeric.ReferenceDistribution;

/** Estimate and normal multiple of the standard error from the sum of weights. */
final class NormalInterval implements MeanInterval {
  @Override
  public String name() {
    return "normal";
  }

  @Override
  public String label() {
    return "normal interval";
  }

  @Override
  public PooledMean around(WeightedMean mean, double level) {
    return PooledMean.symmetric(
        mean.estimate(), mean.standardError(), ReferenceDistribution.normal(), level);
  }
}
