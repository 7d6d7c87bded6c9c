package gapwise.numeric;

/** A continuous distribution. */
public interface Continuous {
  /** The probability of a value below x. */
  double below(double x);

  /** The probability of a value above x. */
  double above(double x);

  /**
   * The value with a probability below it.
   *
   * @param probability above 0 and below 1
   */
  double quantile(double probability);

  /** Logarithm of the density, up to a constant. */
  double logDensity(double x);
}
