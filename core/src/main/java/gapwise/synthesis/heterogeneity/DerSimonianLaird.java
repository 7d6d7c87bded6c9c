package gapwise.synthesis.heterogeneity;

/** (Q - (k-p)) / tr P with weights 1/v: DerSimonian and Laird, Control Clin Trials 1986;7:177. */
final class DerSimonianLaird implements TauSquaredEstimator {
  @Override
  public String name() {
    return "dersimonian-laird";
  }

  @Override
  public String label() {
    return "DerSimonian-Laird";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return TauSquared.cut(sums.momentEstimateAt(0));
  }
}
