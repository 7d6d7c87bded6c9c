package gapwise.synthesis.trial;

import gapwise.budget.Work;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;

/**
 * A trial that compares two proportions by Fisher's exact test, arms of equal size. Its power is
 * counted over every outcome the trial can have, with no approximation.
 *
 * @param trial the proportions
 */
record FisherExactTrial(TrialOfProportions trial) {
  /** Tables as likely as the one observed, to rounding, count as such. */
  private static final double ROUNDING = 1 + 1e-7;

  /**
   * The chance that the test finds the difference on its right side: the sum over outcomes whose
   * two-sided p, the chance given both margins of a table no more likely, is at most the
   * significance (Fisher, Statistical Methods for Research Workers, 5th ed. 1934, section 21.02).
   *
   * @param patientsPerArm at least 1
   */
  double power(int patientsPerArm, Demands demands) {
    int n = patientsPerArm;
    double low = Math.min(trial.comparator(), trial.intervention());
    double high = Math.max(trial.comparator(), trial.intervention());
    double[] ofLow = chances(n, low);
    double[] ofHigh = chances(n, high);
    double power = 0;
    for (int events = 1; events < 2 * n; events++) {
      Work.check();
      power += power(n, events, ofLow, ofHigh, demands.significance());
    }
    return power;
  }

  /** What outcomes with so many events in both arms together add. */
  private static double power(
      int n, int events, double[] ofLow, double[] ofHigh, double significance) {
    int least = Math.max(0, events - n);
    int most = Math.min(n, events);
    HypergeometricDistribution given = HypergeometricDistribution.of(2 * n, events, n);
    double[] chances = new double[most - least + 1];
    Arrays.setAll(chances, i -> given.probability(least + i));
    double power = 0;
    for (int i = 0; i < chances.length; i++) {
      int inLow = least + i;
      int inHigh = events - inLow;
      if (inHigh > inLow && twoSided(chances, chances[i]) <= significance) {
        power += ofLow[inLow] * ofHigh[inHigh];
      }
    }
    return power;
  }

  private static double twoSided(double[] chances, double observed) {
    return Arrays.stream(chances).filter(one -> one <= observed * ROUNDING).sum();
  }

  private static double[] chances(int n, double proportion) {
    BinomialDistribution events = BinomialDistribution.of(n, proportion);
    double[] chances = new double[n + 1];
    Arrays.setAll(chances, events::probability);
    return chances;
  }

  /**
   * Patients needed in each arm: the number from which on, up to one half more than the formula
   * with continuity correction says, the power is never missed again. The power of an exact test
   * goes up and down as patients are added, so that one more can lose it.
   */
  int patientsPerArm(Demands demands) {
    int most = (int) Math.ceil(1.5 * trial.patientsPerArmWithContinuityCorrection(demands)) + 5;
    int needed = most + 1;
    while (needed > 1 && power(needed - 1, demands) >= demands.power()) {
      needed--;
    }
    return needed;
  }
}
