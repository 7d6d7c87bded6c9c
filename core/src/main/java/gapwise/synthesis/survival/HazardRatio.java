package gapwise.synthesis.survival;

import gapwise.problem.Problem;

/** The ratio of the rates at which events come in two groups, or why there is none. */
public sealed interface HazardRatio {
  /**
   * Estimated.
   *
   * @param logEstimate of the group over the group it is set against
   * @param standardError from the information, above 0
   */
  record Estimated(double logEstimate, double standardError) implements HazardRatio {}

  /** The likelihood has no maximum, or is flat. */
  record NotEstimable(Problem reason) implements HazardRatio {}
}
