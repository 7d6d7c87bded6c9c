package gapwise.synthesis.trial;

import java.util.OptionalInt;

/**
 * A trial that compares two proportions by the test of their difference with the pooled variance,
 * arms of equal size.
 *
 * @param comparator proportion after the comparator, above 0 and below 1
 * @param intervention proportion after the intervention, above 0 and below 1, not the same
 */
public record TrialOfProportions(double comparator, double intervention) {
  /**
   * Patients in each arm up to which the formula without correction promises a power that a test of
   * so few does not have, and up to which the exact test is therefore counted out. Common practice,
   * no source: Fisher's test is usual where trials are small.
   */
  public static final int MOST_EXACT = 100;

  public TrialOfProportions {
    if (!(comparator > 0 && comparator < 1 && intervention > 0 && intervention < 1)) {
      throw new IllegalArgumentException(
          "proportions must lie between 0 and 1, were " + comparator + " and " + intervention);
    }
    if (comparator == intervention) {
      throw new IllegalArgumentException("proportions must differ, both were " + comparator);
    }
  }

  /**
   * Patients needed in each arm, not rounded: {@code n = (a root(2 p q) + b root(p1 q1 + p2
   * q2))^2/(p1 - p2)^2}, with p the mean of both proportions, a the critical value and b the normal
   * value of the power (Fleiss, Levin and Paik, Statistical Methods for Rates and Proportions, 3rd
   * ed. 2003, equation 4.14). The other side of the test is left out of the power.
   */
  public double patientsPerArm(Demands demands) {
    double mean = (comparator + intervention) / 2;
    double alike = Math.sqrt(2 * mean * (1 - mean));
    double apart = Math.sqrt(comparator * (1 - comparator) + intervention * (1 - intervention));
    double root =
        (demands.criticalValue() * alike + demands.powerValue() * apart)
            / Math.abs(intervention - comparator);
    return root * root;
  }

  /**
   * Patients needed in each arm for Fisher's exact test, counted out; empty where the formula with
   * continuity correction asks for more than {@link #MOST_EXACT}.
   */
  public OptionalInt patientsPerArmByExactTest(Demands demands) {
    return patientsPerArmWithContinuityCorrection(demands) > MOST_EXACT
        ? OptionalInt.empty()
        : OptionalInt.of(new FisherExactTrial(this).patientsPerArm(demands));
  }

  /** The chance that Fisher's exact test finds the difference with so many patients in each arm. */
  public double powerOfExactTest(int patientsPerArm, Demands demands) {
    return new FisherExactTrial(this).power(patientsPerArm, demands);
  }

  /**
   * The same with continuity correction, for a trial that will be read by an exact test: {@code n/4
   * (1 + root(1 + 4/(n |p1 - p2|)))^2} (Fleiss, Tytun and Ury, Biometrics 1980;36:343).
   */
  public double patientsPerArmWithContinuityCorrection(Demands demands) {
    double n = patientsPerArm(demands);
    double sum = 1 + Math.sqrt(1 + 4 / (n * Math.abs(intervention - comparator)));
    return n / 4 * sum * sum;
  }
}
