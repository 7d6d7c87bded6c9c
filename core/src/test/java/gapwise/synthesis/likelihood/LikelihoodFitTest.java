package gapwise.synthesis.likelihood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any counts, and values of a general mixed-model library. */
class LikelihoodFitTest {
  static LongStream seeds() {
    return LongStream.range(1, 9);
  }

  /** Events and totals of two groups; logits differ between studies by a deviation of 0.8. */
  private static double[][] counts(long seed, int studies, int size) {
    Random random = new Random(seed);
    double[][] counts = new double[4][studies];
    for (int i = 0; i < studies; i++) {
      double base = random.nextGaussian();
      double effect = 0.4 + 0.8 * random.nextGaussian();
      for (int group = 0; group < 2; group++) {
        int n = size + random.nextInt(size);
        double p = 1 / (1 + Math.exp(-base - (group == 0 ? effect : 0)));
        counts[2 * group + 1][i] = n;
        counts[2 * group][i] = IntStream.range(0, n).filter(j -> random.nextDouble() < p).count();
      }
    }
    return counts;
  }

  private static LikelihoodFit.Estimate top(LikelihoodFit fit) {
    LikelihoodFit.Estimate top = assertInstanceOf(LikelihoodFit.Estimate.class, fit);
    assertTrue(top.converged());
    return top;
  }

  private static double[] permuted(double[] values, int[] order) {
    return Arrays.stream(order).mapToDouble(i -> values[i]).toArray();
  }

  private static double[] less(double[] from, double[] values) {
    return IntStream.range(0, from.length).mapToDouble(i -> from[i] - values[i]).toArray();
  }

  private static void same(LikelihoodFit one, LikelihoodFit other, double sign) {
    LikelihoodFit.Estimate a = top(one);
    LikelihoodFit.Estimate b = top(other);
    assertEquals(a.estimate(), sign * b.estimate(), 1e-8);
    assertEquals(a.standardError(), b.standardError(), 1e-8);
    assertEquals(a.tau(), b.tau(), 1e-7);
    assertEquals(a.logLikelihood(), b.logLikelihood(), 1e-9);
  }

  /**
   * lme4 1.1-31 (glmer, binomial and poisson, nAGQ = 25, bobyqa to 1e-10, tolPwrss 1e-12) on the
   * datasets adherence-proportions, proportions-full-arms and stroke-rates of the published checks.
   * Its own stopping rule leaves some 1e-7 in the standard errors.
   */
  @Test
  void aGeneralMixedModelLibraryGivesTheSameToSixDigits() {
    double[] full = {9, 12, 30, 7, 18, 0, 22, 14, 5, 41};
    double[] ofFull = {9, 12, 32, 9, 20, 4, 25, 14, 8, 44};
    near(2.2108149617, 1.6072435614, 0.6204252942, BinomialNormal.fit(full, ofFull, 25));
    double[] kept = {11, 24, 179, 82, 60, 11, 99, 9, 88, 17, 26, 23, 40};
    double[] all = {29, 33, 326, 240, 110, 29, 244, 17, 215, 26, 138, 55, 54};
    near(-0.1118126691, 0.6153766115, 0.1880444165, BinomialNormal.fit(kept, all, 25));
    double[] treated = {9, 8, 3, 6, 7, 20};
    double[] treatedTime = {413, 263, 487, 237, 489, 507};
    near(-3.8830774515, 0.4257683246, 0.2309252699, PoissonNormal.fit(treated, treatedTime, 25));
    double[] control = {19, 19, 13, 9, 23, 50};
    double[] controlTime = {398, 245, 435, 241, 483, 405};
    near(-2.9060058406, 0.4405896216, 0.2046985003, PoissonNormal.fit(control, controlTime, 25));
  }

  private static void near(double estimate, double tau, double error, LikelihoodFit fit) {
    LikelihoodFit.Estimate top = top(fit);
    assertEquals(estimate, top.estimate(), 5e-7);
    assertEquals(tau, top.tau(), 5e-7);
    assertEquals(error, top.standardError(), 1e-6);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void theOrderOfStudiesDoesNotMatter(long seed) {
    double[][] c = counts(seed, 9, 12);
    int[] order = {4, 1, 8, 0, 2, 7, 3, 6, 5};
    same(
        BinomialNormal.fit(c[0], c[1], 25),
        BinomialNormal.fit(permuted(c[0], order), permuted(c[1], order), 25),
        1);
    same(
        FourfoldNormal.conditional(c[0], c[1], c[2], c[3], 25),
        FourfoldNormal.conditional(
            permuted(c[0], order),
            permuted(c[1], order),
            permuted(c[2], order),
            permuted(c[3], order),
            25),
        1);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void countingTheOtherEventMirrorsAProportion(long seed) {
    double[][] c = counts(seed, 9, 12);
    same(BinomialNormal.fit(c[0], c[1], 25), BinomialNormal.fit(less(c[1], c[0]), c[1], 25), -1);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void swappingTheGroupsMirrorsTheConditionalModelAndHalvesAndNotTheCodingZeroOne(long seed) {
    double[][] c = counts(seed, 9, 12);
    same(
        FourfoldNormal.conditional(c[0], c[1], c[2], c[3], 25),
        FourfoldNormal.conditional(c[2], c[3], c[0], c[1], 25),
        -1);
    same(
        FourfoldNormal.unconditional(c[0], c[1], c[2], c[3], true, 25),
        FourfoldNormal.unconditional(c[2], c[3], c[0], c[1], true, 25),
        -1);
    same(
        RateRatioNormal.fit(c[0], c[1], c[2], c[3], 25),
        RateRatioNormal.fit(c[2], c[3], c[0], c[1], 25),
        -1);
    LikelihoodFit.Estimate one =
        top(FourfoldNormal.unconditional(c[0], c[1], c[2], c[3], false, 25));
    LikelihoodFit.Estimate other =
        top(FourfoldNormal.unconditional(c[2], c[3], c[0], c[1], false, 25));
    assertTrue(one.tau() == 0 || Math.abs(one.estimate() + other.estimate()) > 1e-6);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void oneSetOfFewPointsIsNearManyWhereStudiesAreLarge(long seed) {
    double[][] c = counts(seed, 12, 200);
    LikelihoodFit.Estimate laplace = top(BinomialNormal.fit(c[0], c[1], 1));
    LikelihoodFit.Estimate many = top(BinomialNormal.fit(c[0], c[1], 61));
    assertEquals(many.estimate(), laplace.estimate(), 2e-3);
    assertEquals(many.tau(), laplace.tau(), 5e-3);
    assertEquals(many.logLikelihood(), laplace.logLikelihood(), 5e-2);
  }

  @Test
  void withoutSpreadTheFitIsThatOfAllCountsTogether() {
    double[] x = {6, 9, 12, 3};
    double[] n = {20, 30, 40, 10};
    LikelihoodFit.Estimate top = top(BinomialNormal.fit(x, n, 25));
    assertEquals(0, top.tau());
    assertEquals(Math.log(30.0 / 70), top.estimate(), 1e-10);
    assertEquals(Math.sqrt(1.0 / 30 + 1.0 / 70), top.standardError(), 1e-10);
    LikelihoodFit.Estimate rate = top(PoissonNormal.fit(x, new double[] {200, 300, 400, 100}, 25));
    assertEquals(0, rate.tau());
    assertEquals(Math.log(0.03), rate.estimate(), 1e-10);
    assertEquals(1 / Math.sqrt(30), rate.standardError(), 1e-10);
  }

  /**
   * Normal likelihood of logits, by a scan: what the exact likelihood tends to in large studies.
   */
  @Test
  void largeStudiesApproachInverseVariance() {
    double[] apart = {Double.NaN, Double.NaN, Double.NaN};
    double[] shares = {0.30, 0.42, 0.50, 0.36, 0.55};
    int at = 0;
    for (double n : new double[] {100, 10_000, 1_000_000}) {
      double[] totals = {n, n, n, n, n};
      double[] x = Arrays.stream(shares).map(p -> Math.rint(p * n)).toArray();
      LikelihoodFit.Estimate top = top(BinomialNormal.fit(x, totals, 25));
      double best = Double.NEGATIVE_INFINITY;
      double mean = 0;
      for (double tau = 0.001; tau < 1; tau += 0.0005) {
        double weights = 0;
        double sum = 0;
        for (double p : shares) {
          double w = 1 / (1 / (n * p * (1 - p)) + tau * tau);
          weights += w;
          sum += w * Math.log(p / (1 - p));
        }
        double value = 0;
        for (double p : shares) {
          double w = 1 / (1 / (n * p * (1 - p)) + tau * tau);
          double distance = Math.log(p / (1 - p)) - sum / weights;
          value += (Math.log(w) - w * distance * distance) / 2;
        }
        if (value > best) {
          best = value;
          mean = sum / weights;
        }
      }
      apart[at] = Math.abs(top.estimate() - mean);
      at++;
    }
    assertTrue(
        apart[0] < 0.02 && apart[1] < apart[0] / 5 && apart[2] < 1e-4, Arrays.toString(apart));
  }

  @Test
  void aMillionPatientsNeitherOverflowNorTakeLong() {
    double[] n = {1e6, 1e6, 1e6};
    double[] x = {300_000, 420_000, 500_000};
    double[] y = {200_000, 330_000, 440_000};
    LikelihoodFit.Estimate given = top(FourfoldNormal.conditional(x, n, y, n, 25));
    LikelihoodFit.Estimate free = top(FourfoldNormal.unconditional(x, n, y, n, true, 25));
    // with so many patients it makes no difference what is held fixed
    assertEquals(free.estimate(), given.estimate(), 1e-6);
    assertEquals(free.tau(), given.tau(), 1e-6);
    assertEquals(free.standardError(), given.standardError(), 1e-6);
    top(FourfoldNormal.conditional(new double[] {1, 0, 2}, n, new double[] {0, 3, 1}, n, 25));
    top(BinomialNormal.fit(new double[] {1, 999_999, 5}, n, 200));
  }

  @Test
  void whereTheLikelihoodHasNoHighestPointTheReasonIsTold() {
    double[] n = {4, 9};
    assertEquals(
        new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.MEAN_FALLS),
        BinomialNormal.fit(new double[] {0, 0}, n, 25));
    assertEquals(
        new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.MEAN_RISES), BinomialNormal.fit(n, n, 25));
    assertEquals(
        new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.SPREAD_RISES),
        BinomialNormal.fit(new double[] {0, 9}, n, 25));
    assertEquals(
        new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.NO_INFORMATION),
        FourfoldNormal.conditional(new double[] {0, 9}, n, new double[] {0, 9}, n, 25));
    assertEquals(
        new LikelihoodFit.NoMaximum(LikelihoodFit.Reason.MEAN_FALLS),
        FourfoldNormal.unconditional(new double[] {0, 4}, n, new double[] {2, 9}, n, true, 25));
  }

  @Test
  void studiesOfOnePatientSayNothingOfTheSpread() {
    LikelihoodFit.Estimate top =
        top(BinomialNormal.fit(new double[] {0, 1, 1}, new double[] {1, 1, 1}, 25));
    assertEquals(0, top.tau());
    assertEquals(Math.log(2), top.estimate(), 1e-9);
  }

  @Test
  void studiesWithoutInformationAddNothing() {
    double[][] c = counts(3, 6, 15);
    double[][] more = new double[4][];
    double[][] added = {{0, 12}, {10, 12}, {0, 7}, {8, 7}};
    for (int column = 0; column < 4; column++) {
      more[column] = Arrays.copyOf(c[column], 8);
      System.arraycopy(added[column], 0, more[column], 6, 2);
    }
    same(
        FourfoldNormal.conditional(c[0], c[1], c[2], c[3], 25),
        FourfoldNormal.conditional(more[0], more[1], more[2], more[3], 25),
        1);
    same(
        FourfoldNormal.unconditional(c[0], c[1], c[2], c[3], true, 25),
        FourfoldNormal.unconditional(more[0], more[1], more[2], more[3], true, 25),
        1);
  }
}
