package gapwise.synthesis.heterogeneity;

/**
 * Sample variance of the effects less the mean variance within studies: Cochran, Biometrics
 * 1954;10:101; Hedges and Olkin 1985. The moment estimate with equal weights.
 */
final class Hedges implements TauSquaredEstimator {
  @Override
  public String name() {
    return "hedges";
  }

  @Override
  public String label() {
    return "Hedges";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return TauSquared.cut(sums.unweightedMomentEstimate());
  }
}
