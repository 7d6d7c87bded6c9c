package gapwise.synthesis.heterogeneity;

/**
 * The moment estimate again with weights 1/(v + t), t the DerSimonian-Laird value cut at 0:
 * DerSimonian and Kacker, Contemp Clin Trials 2007;28:105.
 */
final class TwoStepDerSimonianLaird implements TauSquaredEstimator {
  @Override
  public String name() {
    return "two-step-dersimonian-laird";
  }

  @Override
  public String label() {
    return "two-step DerSimonian-Laird";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    double first = Math.max(0, sums.momentEstimateAt(0));
    return TauSquared.cut(sums.momentEstimateAt(first));
  }
}
