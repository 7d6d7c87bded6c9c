package gapwise.synthesis.heterogeneity;

/**
 * Morris, J Am Stat Assoc 1983;78:47. Its equation t = sum w [k/(k-1) r^2 - v] / sum w has the root
 * of Paule and Mandel (multiply out with v = 1/w - t), so that root is taken.
 */
final class EmpiricalBayes implements TauSquaredEstimator {
  private final PauleMandel same = new PauleMandel();

  @Override
  public String name() {
    return "empirical-bayes";
  }

  @Override
  public String label() {
    return "empirical Bayes";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    return same.estimate(sums);
  }
}
