package gapwise.numeric;

import org.apache.commons.numbers.gamma.RegularizedBeta;

/**
 * Quantiles of the beta distribution by bracketed root of the regularised incomplete beta function,
 * with relative accuracy also near 0 and 1, where a solver with a fixed absolute tolerance would
 * stop early (one event in a million).
 */
public final class BetaQuantile {
  private BetaQuantile() {}

  /**
   * The x with {@code I_x(a, b) = probability}.
   *
   * @param probability above 0 and below 1
   * @param a first shape, above 0
   * @param b second shape, above 0
   */
  public static double lowerTail(double probability, double a, double b) {
    return BracketedRoot.find(x -> RegularizedBeta.value(x, a, b) - probability, 0, 1).value();
  }

  /** The x with {@code 1 - I_x(a, b) = probability}; arguments as in {@link #lowerTail}. */
  public static double upperTail(double probability, double a, double b) {
    return BracketedRoot.find(x -> probability - RegularizedBeta.complement(x, a, b), 0, 1).value();
  }
}
