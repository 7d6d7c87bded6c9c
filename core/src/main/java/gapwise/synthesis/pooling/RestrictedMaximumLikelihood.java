package gapwise.synthesis.pooling;

/** Restricted maximum likelihood; see {@link NormalLikelihood}. */
final class RestrictedMaximumLikelihood implements TauSquaredEstimator {
  @Override
  public String name() {
    return "restricted-maximum-likelihood";
  }

  @Override
  public String label() {
    return "restricted maximum likelihood";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return sums.highestLikelihood(true);
  }
}
