package gapwise.synthesis.heterogeneity;

/** Restricted maximum likelihood; see {@link NormalLikelihood}. */
public final class RestrictedMaximumLikelihood implements TauSquaredEstimator {
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
