package gapwise.synthesis.heterogeneity;

/**
 * Sidik and Jonkman, Appl Stat 2005;54:367: start from t0, the mean squared unweighted residual,
 * then t0 Q(t0)/(k-p). The start divides by k, with moderators too. Never 0, and not defined when
 * no residual is left: all effects are equal, or the moderators explain them to the last digit.
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
          "all effects are equal, or the moderators pass through every one, so Sidik and Jonkman's"
              + " estimator starts at 0 and has no value;"
              + " another estimator gives 0");
    }
    return new TauSquared.Estimate(
        start * sums.squaresAt(start) / (sums.size() - sums.parameters()), true);
  }
}
