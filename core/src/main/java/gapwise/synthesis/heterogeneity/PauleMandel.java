package gapwise.synthesis.heterogeneity;

/** The t at which Q(t) = k - p: Paule and Mandel, J Res Natl Bur Stand 1982;87:377. */
final class PauleMandel implements TauSquaredEstimator {
  @Override
  public String name() {
    return "paule-mandel";
  }

  @Override
  public String label() {
    return "Paule-Mandel";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return sums.squaresReach(sums.size() - sums.parameters());
  }
}
