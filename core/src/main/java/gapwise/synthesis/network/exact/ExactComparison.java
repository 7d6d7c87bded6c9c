package gapwise.synthesis.network.exact;

import gapwise.effect.Interval;

/**
 * One treatment less another by the exact likelihood.
 *
 * @param estimate log odds ratio
 * @param standardError from the information on effects and tau at the top, above 0
 * @param interval its limits
 * @param profiled whether both limits are of the profile likelihood; else normal by the standard
 *     error
 */
public record ExactComparison(
    double estimate, double standardError, Interval interval, boolean profiled) {
  /** The same seen from the other side. */
  public ExactComparison reversed() {
    return new ExactComparison(
        -estimate, standardError, new Interval(-interval.upper(), -interval.lower()), profiled);
  }
}
