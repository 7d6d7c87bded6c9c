package gapwise.coverage;

import gapwise.effect.ArmCounts;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Worlds in which the logit of the true union rate of a series is normal about the logit of the
 * median rate, and half of all conceivable series exceed that rate. Tau is a number, or every
 * replicate draws its own, each value from 0 to 1.2 alike.
 */
final class ShareScenarios {
  private static final int[] SERIES = {1, 2, 3, 4, 5, 10, 30};
  private static final double[] MEDIANS = {0.5, 0.8, 0.9, 0.95, 0.98};
  private static final double[] TAUS = {0, 0.5, 1.0};
  private static final double MOST_TAU = 1.2;

  /** Series of limbs reconstructed are mostly of this size; the log of the size is uniform. */
  private static final double LEAST_PATIENTS = 5;

  private static final double MOST_PATIENTS = 60;

  /** Three other methods of the same outcome: how many series each has, and its median rate. */
  private static final int[] SERIES_OF_OTHERS = {3, 5, 8};

  private static final double[] MEDIANS_OF_OTHERS = {0.75, 0.85, 0.92};

  private ShareScenarios() {}

  /** All scenarios, in the order of the tables. */
  static List<Scenario<DrawnShares>> all() {
    List<Scenario<DrawnShares>> all = new ArrayList<>();
    for (int series : SERIES) {
      for (double median : MEDIANS) {
        for (double tau : TAUS) {
          all.add(scenario(series, median, OptionalDouble.of(tau)));
        }
        all.add(scenario(series, median, OptionalDouble.empty()));
      }
    }
    return all;
  }

  private static Scenario<DrawnShares> scenario(int series, double median, OptionalDouble tau) {
    return new Scenario<>(
        series, String.valueOf(median), tau, random -> draw(random, series, median, tau));
  }

  private static DrawnShares draw(
      SplittableRandom random, int series, double median, OptionalDouble tau) {
    double spread = tau.orElseGet(() -> random.nextDouble(0, MOST_TAU));
    List<List<ArmCounts>> others = new ArrayList<>();
    for (int i = 0; i < SERIES_OF_OTHERS.length; i++) {
      others.add(series(random, SERIES_OF_OTHERS[i], MEDIANS_OF_OTHERS[i], spread));
    }
    return new DrawnShares(
        median,
        spread,
        series(random, series, median, spread),
        others,
        rate(random, median, spread));
  }

  private static List<ArmCounts> series(
      SplittableRandom random, int count, double median, double spread) {
    List<ArmCounts> drawn = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double logs = random.nextDouble(Math.log(LEAST_PATIENTS), Math.log(MOST_PATIENTS));
      int patients = (int) Math.round(Math.exp(logs));
      double rate = rate(random, median, spread);
      int united = 0;
      for (int patient = 0; patient < patients; patient++) {
        united += random.nextDouble() < rate ? 1 : 0;
      }
      drawn.add(new ArmCounts(united, patients));
    }
    return drawn;
  }

  private static double rate(SplittableRandom random, double median, double spread) {
    double logit = Math.log(median / (1 - median)) + spread * random.nextGaussian();
    return 1 / (1 + Math.exp(-logit));
  }
}
