package gapwise.synthesis.bayes;

/** What is believed before the studies, of their mean and of tau, one independent of the other. */
public record Priors(MeanPrior mean, TauPrior tau) {
  /** Least and greatest scale that can be reckoned with beside any data. */
  private static final double LEAST = 1e-60;

  private static final double GREATEST = 1e60;

  /**
   * The power a for which the posterior of tau falls like tau^-a. The likelihood of k studies falls
   * like tau^-(k-1) under a flat mean and like tau^-k under a normal one.
   */
  double tailExponent(int studies) {
    return tau.tailExponent() + studies - (mean.isFlat() ? 1 : 0);
  }

  /** Whether the posterior integrates to a finite value, which needs a power above 1. */
  boolean isProper(int studies) {
    return tailExponent(studies) > 1;
  }

  /**
   * Whether the posterior of tau has a moment; under a flat mean those of the mean, and always
   * those of a further study, exist with it.
   */
  boolean hasMoment(int order, int studies) {
    return tailExponent(studies) > order + 1;
  }

  /** The highest of the first two moments of tau that exists, or 0. */
  int highestMoment(int studies) {
    return hasMoment(2, studies) ? 2 : hasMoment(1, studies) ? 1 : 0;
  }

  /** The highest of the first two moments of the square of tau that exists, or 0. */
  int highestMomentOfSquare(int studies) {
    return hasMoment(4, studies) ? 2 : hasMoment(2, studies) ? 1 : 0;
  }

  boolean isWithinArithmetic() {
    double turn = tau.turningPoint().orElse(1);
    return turn > LEAST
        && turn < GREATEST
        && Math.abs(mean.centre()) < GREATEST
        && mean.precision() < GREATEST;
  }
}
