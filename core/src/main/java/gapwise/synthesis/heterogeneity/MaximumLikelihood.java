package gapwise.synthesis.heterogeneity;

/** Maximum likelihood; see {@link NormalLikelihood}. */
public final class MaximumLikelihood implements TauSquaredEstimator {
  @Override
  public String name() {
    return "maximum-likelihood";
  }

  @Override
  public String label() {
    return "maximum likelihood";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return sums.highestLikelihood(false);
  }
}
