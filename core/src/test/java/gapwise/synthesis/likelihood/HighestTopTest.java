package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.numeric.GaussHermite;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The search against a grid of tau, 0 and 0.03 to 40 in steps of 15 %, with the mean and intercepts
 * at their best for each: small sets, among them some with one huge study, where second tops are to
 * be feared. What the grid finds higher, the search missed.
 */
class HighestTopTest {
  private static final int POINTS = 25;
  private static final double LEVEL = 1e-6;

  @Test
  void noGridOfTauFindsAHigherLikelihoodOfProportions() {
    SplittableRandom random = new SplittableRandom(1);
    List<Double> missed = new ArrayList<>();
    int fitted = 0;
    for (int set = 0; set < 200; set++) {
      double[][] arm = arm(random, 2 + random.nextInt(6), set % 3);
      StudyLikelihoods studies = new BinomialLikelihoods(arm[0], arm[1], new double[arm[0].length]);
      fitted += compare(studies, missed) ? 1 : 0;
    }
    assertTrue(fitted > 150, fitted + " fitted");
    assertEquals(List.of(), missed);
  }

  @Test
  void noGridOfTauFindsAHigherLikelihoodOfRates() {
    SplittableRandom random = new SplittableRandom(2);
    List<Double> missed = new ArrayList<>();
    int fitted = 0;
    for (int set = 0; set < 200; set++) {
      double[][] arm = arm(random, 2 + random.nextInt(6), set % 3);
      fitted += compare(new PoissonLikelihoods(arm[0], arm[1]), missed) ? 1 : 0;
    }
    assertTrue(fitted > 150, fitted + " fitted");
    assertEquals(List.of(), missed);
  }

  @Test
  void noGridOfTauFindsAHigherLikelihoodOfFourfoldTables() {
    SplittableRandom random = new SplittableRandom(3);
    List<Double> missed = new ArrayList<>();
    int fitted = 0;
    for (int set = 0; set < 120; set++) {
      int k = 2 + random.nextInt(5);
      double[][] one = arm(random, k, set % 3);
      double[][] other = arm(random, k, set % 3);
      double[] all = new double[k];
      for (int i = 0; i < k; i++) {
        all[i] = one[0][i] + other[0][i];
      }
      double[] none = new double[k];
      HypergeometricLikelihoods given =
          new HypergeometricLikelihoods(one[0], one[1], other[1], all);
      StudyLikelihoods studies =
          new TwoArmLikelihoods(
              new BinomialLikelihoods(one[0], one[1], none),
              new BinomialLikelihoods(other[0], other[1], none),
              given,
              set % 2 == 0);
      fitted += compare(studies, missed) ? 1 : 0;
    }
    assertTrue(fitted > 80, fitted + " fitted");
    assertEquals(List.of(), missed);
  }

  private static boolean compare(StudyLikelihoods studies, List<Double> missed) {
    if (!(LikelihoodSearch.fit(studies, POINTS) instanceof LikelihoodFit.Estimate found)) {
      return false;
    }
    double higher = highest(studies) - found.logLikelihood();
    if (higher > LEVEL) {
      missed.add(higher);
    }
    return true;
  }

  /** Events and totals: of usual size, tiny, or tiny beside one huge study. */
  private static double[][] arm(SplittableRandom random, int k, int kind) {
    double mean = random.nextDouble(-3, 3);
    double tau = random.nextInt(3);
    double[][] arm = new double[2][k];
    for (int i = 0; i < k; i++) {
      arm[1][i] =
          kind == 0
              ? random.nextInt(3, 61)
              : kind == 1 ? random.nextInt(3, 13) : i == 0 ? 2000 : random.nextInt(2, 30);
      double rate = 1 / (1 + Math.exp(-mean - tau * random.nextGaussian()));
      for (int patient = 0; patient < arm[1][i]; patient++) {
        arm[0][i] += random.nextDouble() < rate ? 1 : 0;
      }
    }
    return arm;
  }

  private static double highest(StudyLikelihoods studies) {
    double highest = climbed(studies, 0);
    for (double tau = 0.03; tau < 40; tau *= 1.15) {
      highest = Math.max(highest, climbed(studies, tau));
    }
    return highest;
  }

  private static double climbed(StudyLikelihoods studies, double tau) {
    LikelihoodSurface at = new LikelihoodSurface(studies, GaussHermite.of(POINTS));
    at.moveTo(0, tau);
    LikelihoodSurface next = at.another();
    for (int step = 0; step < 80; step++) {
      double[] move = {-at.slopeMean / Math.min(at.meanMean, -1e-3), 0};
      double longest = Math.abs(move[0]);
      for (int i = 0; i < at.intercept.length; i++) {
        longest = Math.max(longest, Math.abs(at.interceptStep(i, move[0], 0)));
      }
      double share = longest > 2 ? 2 / longest : 1;
      next.stepFrom(at, move, share);
      for (int cut = 0; cut < 12 && !(next.value > at.value); cut++) {
        share /= 2;
        next.stepFrom(at, move, share);
      }
      if (longest < 1e-6 || !(next.value > at.value)) {
        return at.value;
      }
      LikelihoodSurface before = at;
      at = next;
      next = before;
    }
    return at.value;
  }
}
