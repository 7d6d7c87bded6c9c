package gapwise.demonstration;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Seeded chance that gives the same draws on every machine: uniform numbers of {@link
 * SplittableRandom} and strict arithmetic. Not thread-safe.
 */
final class Draw {
  /** What a stream is drawn for, so that a change of reporting leaves the patients as they are. */
  enum Purpose {
    PATIENTS,
    REPORTING,
    JUDGING,
    FIGURES
  }

  private final SplittableRandom random;

  private Draw(long seed) {
    random = new SplittableRandom(seed);
  }

  /** An own stream for each number and purpose: adding a study leaves all others as they are. */
  static Draw of(long seed, int stream, Purpose purpose) {
    return new Draw(seed * 1_000_003L + stream * 101L + purpose.ordinal());
  }

  double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  int whole(int from, int toInclusive) {
    return random.nextInt(from, toInclusive + 1);
  }

  boolean chance(double probability) {
    return random.nextDouble() < probability;
  }

  /** Standard normal by the method of Box and Muller (Ann Math Stat 1958;29:610). */
  double normal() {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - random.nextDouble()));
    return radius * StrictMath.cos(2 * Math.PI * random.nextDouble());
  }

  /** A positive factor with median 1. */
  double factor(double standardDeviationOfLog) {
    return StrictMath.exp(standardDeviationOfLog * normal());
  }

  /** Exponential waiting time. */
  double waiting(double mean) {
    return -mean * StrictMath.log(1 - random.nextDouble());
  }

  /** A count by the Poisson law, by multiplying uniform numbers (mean below 20). */
  int count(double mean) {
    double limit = StrictMath.exp(-mean);
    int count = 0;
    for (double product = random.nextDouble(); product > limit; product *= random.nextDouble()) {
      count++;
    }
    return count;
  }

  <T> T oneOf(List<T> choices) {
    return choices.get(random.nextInt(choices.size()));
  }
}
