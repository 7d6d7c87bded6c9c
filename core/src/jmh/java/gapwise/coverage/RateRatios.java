package gapwise.coverage;

import gapwise.effect.ArmRate;
import gapwise.effect.Measure;
import gapwise.effect.TwoRates;
import gapwise.synthesis.likelihood.ExactLikelihood;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Rate ratios of two groups watched for two years a patient: 10 or 30 events in 100 years of the
 * comparator.
 */
final class RateRatios {
  private static final double YEARS = 2;

  private RateRatios() {}

  static Family<DrawnEffects<TwoRates>> family() {
    Measure<TwoRates> measure = Pools.measure("incidence-rate-ratio", "log");
    return new Family<>(
        "rate-ratios",
        1,
        Family.Size.FACTOR,
        List.of(Target.MIDDLE, Target.FURTHER),
        Ratios.ways(ExactLikelihood.Model.RATE_RATIO, measure),
        Ratios.scenarios(RateRatios::study));
  }

  private static TwoRates study(SplittableRandom random, double usual, double logRatio) {
    return new TwoRates(arm(random, usual * Math.exp(logRatio)), arm(random, usual));
  }

  private static ArmRate arm(SplittableRandom random, double rate) {
    return Draws.events(random, YEARS * Draws.patients(random), rate);
  }
}
