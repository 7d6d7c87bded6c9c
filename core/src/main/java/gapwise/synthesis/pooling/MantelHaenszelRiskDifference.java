package gapwise.synthesis.pooling;

import gapwise.effect.ArmCounts;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import java.util.OptionalDouble;

/**
 * Risk differences weighted by n1 n2/N, with the variance of Greenland and Robins, Biometrics
 * 1985;41:55.
 */
final class MantelHaenszelRiskDifference extends MantelHaenszel {
  /** Further sum: variance times squared weight. */
  @Override
  CountSums none() {
    return CountSums.none(1);
  }

  @Override
  CountSums of(StudyData study) {
    TwoByTwo t = TwoByTwo.class.cast(study);
    double weight = t.intervention().total() / t.total() * t.comparator().total();
    double difference = t.intervention().proportion() - t.comparator().proportion();
    double variance = variance(t.intervention()) + variance(t.comparator());
    return CountSums.of(
        weight * difference,
        weight,
        OptionalDouble.of(difference),
        OptionalDouble.of(variance),
        weight * weight * variance);
  }

  private static double variance(ArmCounts arm) {
    return arm.proportion() * (arm.nonEvents() / arm.total()) / arm.total();
  }

  @Override
  Pooled pooled(CountSums all, double level) {
    if (all.studies() == 0) {
      return Pooled.without(
          Heterogeneity.UNKNOWN, new Problem("", "no-studies", "no study is left to be pooled"));
    }
    double weights = all.denominator();
    return normal(all, all.numerator() / weights, Math.sqrt(all.terms()[0]) / weights, level);
  }
}
