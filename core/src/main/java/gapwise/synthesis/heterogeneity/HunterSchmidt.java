package gapwise.synthesis.heterogeneity;

/** (Q - k) / sum(1/v): Viechtbauer, J Educ Behav Stat 2005;30:261, equation 8. */
final class HunterSchmidt implements TauSquaredEstimator {
  @Override
  public String name() {
    return "hunter-schmidt";
  }

  @Override
  public String label() {
    return "Hunter-Schmidt";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return TauSquared.cut((sums.squaresAt(0) - sums.size()) / sums.inverseVariances());
  }
}
