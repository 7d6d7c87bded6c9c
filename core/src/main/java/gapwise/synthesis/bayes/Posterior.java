package gapwise.synthesis.bayes;

import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;

/** What the studies leave of the priors, if that is a distribution. The door of this room. */
public sealed interface Posterior permits Posterior.None, Proper {
  /** Works it out; never throws for a sample of at least one study. */
  static Posterior of(EffectSample sample, Priors priors) {
    if (sample.hasZeroVariance()) {
      return new None(
          new Problem(
              "",
              "zero-variance",
              "a study's estimated variance is 0, so there is no normal likelihood of it and no"
                  + " posterior is told; the logit, arcsine or double arcsine scale can use such"
                  + " studies"));
    }
    if (!sample.isWithinArithmetic() || !priors.isWithinArithmetic()) {
      return outOfRange();
    }
    if (!priors.isProper(sample.size())) {
      return new None(
          new Problem(
              "",
              "improper-posterior",
              "with "
                  + sample.size()
                  + (sample.size() == 1 ? " study" : " studies")
                  + " a flat prior of tau leaves a posterior that does not integrate to a finite"
                  + " value, so nothing is told; take a half-normal or half-Cauchy prior of tau"));
    }
    TauDensity density = new TauDensity(sample, priors);
    return TauPanels.of(density)
        .<Posterior>map(panels -> new Proper(density, panels))
        .orElseGet(Posterior::outOfRange);
  }

  /** None, because numbers lie too far apart to be reckoned with. */
  static None outOfRange() {
    return new None(
        new Problem(
            "",
            "number-out-of-range",
            "effects, their variances and the scales of the priors differ by more powers of ten"
                + " than can be reckoned with; check the units of the data and the prior"));
  }

  /** No posterior, and why. */
  record None(Problem why) implements Posterior {}
}
