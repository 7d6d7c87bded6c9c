package gapwise.synthesis.heterogeneity;

/**
 * Sidik and Jonkman, Appl Stat 2005;54:367: start from t0, the mean squared unweighted residual,
 * then t0 Q(t0)/(k-p). Never 0, and not defined when all effects are equal.
 */
final class SidikJonkman implements TauSquaredEstimator {
  /** Effects that differ by less than this share of their size differ by rounding only. */
  private static final double ROUNDING = 1e-14;

  @Override
  public String name() {
    return "sidik-jonkman";
  }

  @Override
  public String label() {
    return "Sidik-Jonkman";
  }

  @Override
  public TauSquared estimate(ResidualSums sums) {
    double start = sums.unweightedSquares() / sums.size();
    if (Math.sqrt(start) <= ROUNDING * sums.largestEffect()) {
      return new TauSquared.NotEstimable(
          "identical-effects",
          "all effects are equal, so Sidik and Jonkman's estimator starts at 0 and has no value;"
              + " another estimator gives 0");
    }
    return new TauSquared.Estimate(
        start * sums.squaresAt(start) / (sums.size() - sums.parameters()), true);
  }
}
