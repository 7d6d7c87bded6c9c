package gapwise.coverage;

import gapwise.effect.ArmCounts;
import gapwise.effect.Measure;
import gapwise.effect.TwoByTwo;
import gapwise.synthesis.likelihood.ExactLikelihood;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Odds ratios of two groups: an event in 10 of 100 patients of the comparator and no difference, or
 * in 30 and a ratio of 0.5.
 */
final class OddsRatios {
  private OddsRatios() {}

  static Family<DrawnEffects<TwoByTwo>> family() {
    Measure<TwoByTwo> measure = Pools.measure("odds-ratio", "log");
    return new Family<>(
        "odds-ratios",
        1,
        Family.Size.FACTOR,
        List.of(Target.MIDDLE, Target.FURTHER),
        Ratios.ways(ExactLikelihood.Model.ODDS_RATIO_CONDITIONAL, measure),
        Ratios.scenarios(OddsRatios::study));
  }

  private static TwoByTwo study(SplittableRandom random, double usual, double logRatio) {
    double odds = usual / (1 - usual) * Math.exp(logRatio);
    return new TwoByTwo(arm(random, odds / (1 + odds)), arm(random, usual));
  }

  private static ArmCounts arm(SplittableRandom random, double share) {
    int patients = Draws.patients(random);
    int events = 0;
    for (int i = 0; i < patients; i++) {
      events += random.nextDouble() < share ? 1 : 0;
    }
    return new ArmCounts(events, patients);
  }
}
