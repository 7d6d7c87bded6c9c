package gapwise.synthesis.heterogeneity;

/**
 * What estimators of tau squared see of a sample and its model: sums over studies as functions of
 * tau squared t. They may come from a fit at each t ({@link FittedSums}) or, for a sample without
 * one of its studies, from the sums of all ({@link SumsWithout}).
 */
public interface ResidualSums {
  /** Number of studies, k. */
  int size();

  /** Number of free means, p; less than k. */
  int parameters();

  /** Q(t): squared residuals weighted by 1/(v + t). */
  double squaresAt(double tauSquared);

  /** D: squared residuals of the unweighted fit. */
  double unweightedSquares();

  /** The moment estimate with weights 1/(v + t), before any cut at 0. */
  double momentEstimateAt(double tauSquared);

  /** The moment estimate with equal weights, before any cut at 0. */
  double unweightedMomentEstimate();

  /** Sum of 1/v. */
  double inverseVariances();

  /** The smallest variance within a study, or one below it. */
  double smallestVariance();

  /** The largest variance within a study. */
  double largestVariance();

  /** The largest size of an effect. */
  double largestEffect();

  /** Log likelihood at t, with all constants but log det(X'X)/2. */
  double logLikelihoodAt(double tauSquared, boolean restricted);

  /** Twice the derivative of the log likelihood at t. */
  double likelihoodSlopeAt(double tauSquared, boolean restricted);

  /** The t at which Q takes a value above 0; 0 if Q is below it already at 0. */
  default TauSquared.Estimate squaresReach(double value) {
    return GeneralisedQ.where(this::squaresAt, unweightedSquares(), value);
  }

  /** The t with the highest likelihood. */
  default TauSquared.Estimate highestLikelihood(boolean restricted) {
    return NormalLikelihood.maximum(
        t -> logLikelihoodAt(t, restricted),
        t -> likelihoodSlopeAt(t, restricted),
        unweightedSquares(),
        restricted ? size() - parameters() : size(),
        smallestVariance(),
        largestVariance());
  }
}
