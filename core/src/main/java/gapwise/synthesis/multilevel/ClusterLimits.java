package gapwise.synthesis.multilevel;

import gapwise.numeric.ReferenceDistribution;
import java.util.OptionalInt;

/** How limits and tests of effects in clusters are made. */
public enum ClusterLimits {
  /**
   * Student's t, and F, on clusters less coefficients, at least 1: what a mean or a coefficient
   * rests on is clusters, however many rows they have (the rule for outer terms of Pinheiro and
   * Bates, Mixed-Effects Models in S and S-PLUS, 2000, section 2.4.2, here for all terms, which
   * keeps those that vary within clusters on the safe side). Where the variance between clusters
   * cannot be told, on rows less coefficients.
   */
  T_CLUSTERS,
  /** Normal and chi-squared. */
  NORMAL;

  /** The second degrees of freedom; empty for the normal distribution. */
  OptionalInt degreesOfFreedom(ThreeLevelFit fit) {
    if (this == NORMAL) {
      return OptionalInt.empty();
    }
    int units = fit.told() == ThreeLevelFit.Told.ONLY_WITHIN ? fit.size() : fit.clusters();
    return OptionalInt.of(Math.max(1, units - fit.parameters()));
  }

  /** What an estimate over its standard error is set against. */
  ReferenceDistribution reference(ThreeLevelFit fit) {
    OptionalInt degrees = degreesOfFreedom(fit);
    return degrees.isPresent()
        ? ReferenceDistribution.studentT(degrees.getAsInt())
        : ReferenceDistribution.normal();
  }
}
