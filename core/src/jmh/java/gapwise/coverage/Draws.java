package gapwise.coverage;

import gapwise.effect.ArmMean;
import gapwise.effect.ArmRate;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;

/** What several families draw. */
final class Draws {
  /** Series of limbs reconstructed are mostly of this size; the log of the size is uniform. */
  private static final double LEAST_PATIENTS = 5;

  private static final double MOST_PATIENTS = 60;

  static final int[] SERIES = {1, 2, 3, 4, 5, 10, 30};

  private Draws() {}

  static int patients(SplittableRandom random) {
    double logs = random.nextDouble(Math.log(LEAST_PATIENTS), Math.log(MOST_PATIENTS));
    return (int) Math.round(Math.exp(logs));
  }

  /** Mean and standard deviation of some patients. */
  static ArmMean mean(int patients, DoubleSupplier one) {
    double sum = 0;
    double[] values = new double[patients];
    for (int i = 0; i < patients; i++) {
      values[i] = one.getAsDouble();
      sum += values[i];
    }
    double mean = sum / patients;
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return new ArmMean(
        patients,
        OptionalDouble.of(mean),
        OptionalDouble.of(Math.sqrt(squares / (patients - 1))),
        false,
        false);
  }

  /** Events of a Poisson process. */
  static ArmRate events(SplittableRandom random, double time, double rate) {
    int events = 0;
    double at = random.nextExponential() / rate;
    while (at < time) {
      events++;
      at += random.nextExponential() / rate;
    }
    return new ArmRate(events, time);
  }
}
