package gapwise.coverage;

import gapwise.effect.ArmCounts;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;

/**
 * A world from which series of patients are drawn: the logit of the true union rate of a series is
 * normal about the logit of the median rate.
 *
 * @param series how many there are
 * @param median the rate that half of all conceivable series exceed
 * @param tau standard deviation between series on the logit scale
 */
record Scenario(int series, double median, double tau) {
  private static final int[] SERIES = {3, 5, 10, 30};
  private static final double[] MEDIANS = {0.5, 0.8, 0.9, 0.95, 0.98};
  private static final double[] TAUS = {0, 0.3, 0.6, 1.0};

  /** Series of limbs reconstructed are mostly of this size; the log of the size is uniform. */
  private static final double LEAST_PATIENTS = 5;

  private static final double MOST_PATIENTS = 60;

  /** All scenarios, in the order of the tables. */
  static List<Scenario> all() {
    List<Scenario> all = new ArrayList<>();
    for (int series : SERIES) {
      for (double median : MEDIANS) {
        for (double tau : TAUS) {
          all.add(new Scenario(series, median, tau));
        }
      }
    }
    return all;
  }

  static DoubleStream medians() {
    return DoubleStream.of(MEDIANS);
  }

  static DoubleStream taus() {
    return DoubleStream.of(TAUS);
  }

  static List<Integer> numbersOfSeries() {
    return List.of(3, 5, 10, 30);
  }

  /** The series of one replicate. */
  List<ArmCounts> draw(SplittableRandom random) {
    List<ArmCounts> drawn = new ArrayList<>();
    for (int i = 0; i < series; i++) {
      double logs = random.nextDouble(Math.log(LEAST_PATIENTS), Math.log(MOST_PATIENTS));
      int patients = (int) Math.round(Math.exp(logs));
      double rate = drawRate(random);
      int united = 0;
      for (int patient = 0; patient < patients; patient++) {
        united += random.nextDouble() < rate ? 1 : 0;
      }
      drawn.add(new ArmCounts(united, patients));
    }
    return drawn;
  }

  /** The true rate of one more series. */
  double drawRate(SplittableRandom random) {
    double logit = Math.log(median / (1 - median)) + tau * random.nextGaussian();
    return 1 / (1 + Math.exp(-logit));
  }
}
