package gapwise.synthesis.trial;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What is demanded of a trial.
 *
 * @param significance chance, over both sides, of finding a difference where there is none; above 0
 *     and below 1
 * @param power chance of finding the difference asked about where it is there; at least one half,
 *     below 1
 */
public record Demands(double significance, double power) {
  static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  public Demands {
    if (!(significance > 0 && significance < 1)) {
      throw new IllegalArgumentException(
          "significance must lie between 0 and 1, was " + significance);
    }
    if (!(power >= 0.5 && power < 1)) {
      throw new IllegalArgumentException("power must be from 0.5 to below 1, was " + power);
    }
  }

  /** The standard normal value that a test must pass. */
  double criticalValue() {
    return NORMAL.inverseSurvivalProbability(significance / 2);
  }

  /** The standard normal value below which lies the power. */
  double powerValue() {
    return NORMAL.inverseCumulativeProbability(power);
  }
}
