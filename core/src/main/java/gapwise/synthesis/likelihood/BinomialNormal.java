package gapwise.synthesis.likelihood;

/**
 * Proportions that differ between studies by a normal distribution of their logits: x ~ Bin(n, p),
 * logit p = mean + b, b ~ N(0, tau^2), by maximum likelihood (Hamza, van Houwelingen and Stijnen, J
 * Clin Epidemiol 2008;61:41; Stijnen, Hamza and Ozdemir, Stat Med 2010;29:3046).
 */
public final class BinomialNormal {
  private BinomialNormal() {}

  /**
   * Fits.
   *
   * @param events each from 0 to its total
   * @param totals each above 0, as many as events
   * @param points of the adaptive quadrature, 1 (Laplace) to 200; 25 is usual
   */
  public static LikelihoodFit fit(double[] events, double[] totals, int points) {
    return LikelihoodSearch.fit(
        new BinomialLikelihoods(events, totals, new double[events.length]), points);
  }

  /** The same from whole numbers. */
  public static LikelihoodFit fit(int[] events, int[] totals, int points) {
    return fit(
        java.util.Arrays.stream(events).asDoubleStream().toArray(),
        java.util.Arrays.stream(totals).asDoubleStream().toArray(),
        points);
  }
}
