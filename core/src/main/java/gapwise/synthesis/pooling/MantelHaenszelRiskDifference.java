package gapwise.synthesis.pooling;

import gapwise.effect.ArmCounts;
import gapwise.effect.StudyData;
import gapwise.effect.TwoByTwo;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Risk differences weighted by n1 n2/N, with the variance of Greenland and Robins, Biometrics
 * 1985;41:55.
 */
final class MantelHaenszelRiskDifference implements CountPooling {
  @Override
  public Pooled pool(List<? extends StudyData> studies, double level) {
    if (studies.isEmpty()) {
      return Pooled.without(
          Heterogeneity.UNKNOWN, new Problem("", "no-studies", "no study is left to be pooled"));
    }
    List<Stratum> strata = new ArrayList<>();
    double sum = 0;
    double squares = 0;
    for (StudyData study : studies) {
      TwoByTwo t = TwoByTwo.class.cast(study);
      double weight = t.intervention().total() / t.total() * t.comparator().total();
      double difference = t.intervention().proportion() - t.comparator().proportion();
      double variance = variance(t.intervention()) + variance(t.comparator());
      sum += weight * difference;
      squares += weight * weight * variance;
      strata.add(
          new Stratum(
              weight * difference,
              weight,
              OptionalDouble.of(difference),
              OptionalDouble.of(variance)));
    }
    double weights = Stratum.denominators(strata);
    return Stratum.pooled(strata, sum / weights, Math.sqrt(squares) / weights, level);
  }

  private static double variance(ArmCounts arm) {
    return arm.proportion() * (arm.nonEvents() / arm.total()) / arm.total();
  }
}
