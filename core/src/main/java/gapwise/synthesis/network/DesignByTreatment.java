package gapwise.synthesis.network;

import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import java.util.Optional;

/**
 * The test of differences between designs that allows for differences between studies: a Wald test
 * of all design-by-treatment interactions, with the variance between studies estimated where each
 * design has effects of its own (Higgins, Jackson, Barrett, Lu, Ades and White, Res Synth Methods
 * 2012;3:98).
 *
 * @param test chi-squared on the same degrees of freedom as under a common effect
 * @param tauSquared between studies of one design
 */
public record DesignByTreatment(ChiSquaredTest test, double tauSquared) {
  /** Empty without two designs to set against each other, or two studies in some design. */
  static Optional<DesignByTreatment> of(
      NetworkFrame frame, Designs designs, TauSquaredEstimator estimator) {
    Optional<NetworkFrame> apart = designs.apart().filter(f -> f.degreesOfFreedom() > 0);
    if (apart.isEmpty() || designs.between(frame.fitAt(0), 0).degreesOfFreedom() == 0) {
      return Optional.empty();
    }
    TauSquared within = estimator.estimate(apart.get().sample(), apart.get().model());
    if (within instanceof TauSquared.Estimate estimate) {
      double tauSquared = estimate.value();
      return Optional.of(
          new DesignByTreatment(designs.between(frame.fitAt(tauSquared), tauSquared), tauSquared));
    }
    return Optional.empty();
  }
}
