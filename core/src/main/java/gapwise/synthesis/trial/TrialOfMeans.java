package gapwise.synthesis.trial;

import gapwise.numeric.BracketedRoot;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A trial that compares two means by Student's t, arms of equal size.
 *
 * @param difference of the means, not 0
 * @param standardDeviation of patients within each arm, on the same scale, above 0
 */
public record TrialOfMeans(double difference, double standardDeviation) {
  /** Fewer give no standard deviation. */
  private static final double FEWEST = 2;

  /** More than this in each arm is no trial that anyone will make. */
  static final double MOST = 1e7;

  public TrialOfMeans {
    if (!(Math.abs(difference) > 0 && Double.isFinite(difference))) {
      throw new IllegalArgumentException(
          "difference must be a number other than 0, was " + difference);
    }
    if (!(standardDeviation > 0 && Double.isFinite(standardDeviation))) {
      throw new IllegalArgumentException(
          "standard deviation must be above 0, was " + standardDeviation);
    }
  }

  /**
   * The chance that the test finds the difference: a noncentral t on {@code 2 n - 2} about {@code
   * root(n/2) difference/standardDeviation} passes the critical value (Cohen, Statistical Power
   * Analysis for the Behavioral Sciences, 2nd ed. 1988, chapter 2). The other side is left out.
   *
   * @param patientsPerArm at least 2
   */
  double power(double patientsPerArm, Demands demands) {
    double degreesOfFreedom = 2 * patientsPerArm - 2;
    double critical =
        TDistribution.of(degreesOfFreedom).inverseSurvivalProbability(demands.significance() / 2);
    double delta = Math.sqrt(patientsPerArm / 2) * Math.abs(difference) / standardDeviation;
    return NoncentralT.above(critical, degreesOfFreedom, delta);
  }

  /** Patients needed in each arm, not rounded, at least 2; empty if more than ten million. */
  public OptionalDouble patientsPerArm(Demands demands) {
    if (power(FEWEST, demands) >= demands.power()) {
      return OptionalDouble.of(FEWEST);
    }
    if (power(MOST, demands) < demands.power()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        BracketedRoot.find(n -> power(n, demands) - demands.power(), FEWEST, MOST).value());
  }
}
