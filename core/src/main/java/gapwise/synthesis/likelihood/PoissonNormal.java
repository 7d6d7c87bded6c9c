package gapwise.synthesis.likelihood;

/**
 * Rates that differ between studies by a normal distribution of their logs: x ~ Pois(T exp(mean +
 * b)), b ~ N(0, tau^2), by maximum likelihood (Stijnen, Hamza and Ozdemir, Stat Med 2010;29:3046).
 */
public final class PoissonNormal {
  private PoissonNormal() {}

  /**
   * Fits.
   *
   * @param events each at least 0
   * @param times each above 0, as many as events
   * @param points of the adaptive quadrature, 1 (Laplace) to 200; 25 is usual
   */
  public static LikelihoodFit fit(double[] events, double[] times, int points) {
    return LikelihoodSearch.fit(new PoissonLikelihoods(events, times), points);
  }
}
