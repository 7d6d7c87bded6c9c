package gapwise.synthesis.regression;

import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.pooling.PooledMean;

/**
 * One coefficient of a regression, on the analysis scale of the effects.
 *
 * @param term its column in the design
 * @param value estimate, standard error, interval and test against 0
 */
public record Coefficient(String term, PooledMean value) {
  /** A coefficient with symmetric limits. */
  static Coefficient of(
      String term,
      double estimate,
      double standardError,
      ReferenceDistribution reference,
      double level) {
    return new Coefficient(term, PooledMean.symmetric(estimate, standardError, reference, level));
  }
}
