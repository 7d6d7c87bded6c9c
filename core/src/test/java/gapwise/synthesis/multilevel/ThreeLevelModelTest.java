package gapwise.synthesis.multilevel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.heterogeneity.EffectSample;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The model against a general mixed-model library, dense matrices, and what must always hold. */
class ThreeLevelModelTest {
  private static final List<Double> EFFECTS =
      List.of(0.1, 0.6, 0.7, 1.4, 0.2, -0.35, 1.1, 1.5, 0.9);
  private static final List<Double> VARIANCES =
      List.of(0.04, 0.05, 0.03, 0.06, 0.02, 0.08, 0.05, 0.02, 0.1);
  private static final List<String> CLUSTERS = List.of("A", "A", "B", "B", "C", "C", "D", "D", "D");
  private static final double[] LENGTH = {1, 2, 2, 3, 1, 4, 3, 2, 5};
  private static final double[] ONES = {1, 1, 1, 1, 1, 1, 1, 1, 1};

  /**
   * Expected values of an invented example.
   *
   * @param values between, within, coefficients, their standard errors, log likelihood
   */
  record Case(String source, boolean restricted, boolean moderator, double far, double... values) {}

  static Stream<Case> cases() {
    // Base R 4.2.2: optim (L-BFGS-B) on the likelihood written with dense matrices; its search ends
    // some six digits short of the top. nlme 3.1-162: lme(random = ~1|c/row, weights =
    // varFixed(~v), control = lmeControl(sigma = 1), method = "ML"), which ends some five digits
    // short.
    return Stream.of(
        new Case(
            "base R",
            true,
            false,
            2e-5,
            0.27209805295,
            0.09449791369,
            0.64805552308,
            0.2897394449,
            -7.15472409206),
        new Case(
            "base R",
            false,
            false,
            2e-5,
            0.18957392232,
            0.09338226866,
            0.65132543216,
            0.25132937623,
            -6.76034273262),
        new Case(
            "base R",
            true,
            true,
            2e-5,
            0.31486055645,
            0.10466292904,
            0.80403003877,
            -0.06788513102,
            0.42020967316,
            0.12246572963,
            -8.20028950621),
        new Case(
            "base R",
            false,
            true,
            2e-5,
            0.22280303037,
            0.07857158392,
            0.79217388221,
            -0.06182157529,
            0.36778909185,
            0.11166888133,
            -6.63435307607),
        new Case(
            "nlme",
            false,
            false,
            1e-4,
            0.18957345,
            0.09337812,
            0.651325575,
            0.251328184,
            -6.760342731),
        new Case(
            "nlme",
            false,
            true,
            1e-4,
            0.22280419,
            0.07856773,
            0.7921760296,
            -0.0618225887,
            0.3677860201,
            0.1116673707,
            -6.6343530749));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void theFitAgreesWithComputationsElsewhere(Case example) {
    List<double[]> design = example.moderator() ? List.of(ONES, LENGTH) : List.of(ONES);
    ThreeLevelFit fit =
        ThreeLevelModel.fit(
            ClusteredRows.of(EffectSample.of(EFFECTS, VARIANCES), CLUSTERS, design),
            example.restricted());
    int p = design.size();
    double[] values = example.values();
    assertEquals(values[0], fit.betweenVariance().getAsDouble(), example.far());
    assertEquals(values[1], fit.withinVariance().getAsDouble(), example.far());
    for (int j = 0; j < p; j++) {
      assertEquals(values[2 + j], fit.coefficient(j), example.far());
      assertEquals(values[2 + p + j], Math.sqrt(fit.covariance(j, j)), example.far());
    }
    assertEquals(values[2 + 2 * p], fit.logLikelihood(), 1e-7);
    assertTrue(fit.converged());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void noPointThatIsTriedStandsAboveTheTopAndNoEdgeEither(long seed) {
    Random random = new Random(seed);
    for (int example = 0; example < 8; example++) {
      ClusteredRows rows = random(random, example % 2 == 0);
      for (boolean restricted : new boolean[] {true, false}) {
        ThreeLevelFit fit = ThreeLevelModel.fit(rows, restricted);
        assertTrue(fit.converged());
        double allowed = 1e-9 * (1 + Math.abs(fit.logLikelihood()));
        for (int i = 0; i < 200; i++) {
          double between = random.nextInt(5) == 0 ? 0 : Math.pow(10, random.nextDouble() * 8 - 6);
          double within = random.nextInt(5) == 0 ? 0 : Math.pow(10, random.nextDouble() * 8 - 6);
          double there = new CovarianceFit(rows, between, within).logLikelihood(restricted);
          assertTrue(
              there <= fit.logLikelihood() + allowed,
              () -> between + ", " + within + ": " + there + " above " + fit.logLikelihood());
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25})
  void theDerivativesAreThoseOfTheLikelihood(long seed) {
    Random random = new Random(seed);
    ClusteredRows rows = random(random, true);
    for (boolean restricted : new boolean[] {true, false}) {
      double between = 0.1 + random.nextDouble();
      double within = 0.1 + random.nextDouble();
      double h = 1e-5;
      CovarianceFit.Slope slope = new CovarianceFit(rows, between, within).slope(restricted);
      assertEquals(
          (at(rows, between, within + h, restricted) - at(rows, between, within - h, restricted))
              / (2 * h),
          slope.byWithin(),
          1e-6 * (1 + Math.abs(slope.byWithin())));
      assertEquals(
          (at(rows, between + h, within, restricted) - at(rows, between - h, within, restricted))
              / (2 * h),
          slope.byBetween(),
          1e-6 * (1 + Math.abs(slope.byBetween())));
    }
  }

  private static double at(ClusteredRows rows, double between, double within, boolean restricted) {
    return new CovarianceFit(rows, between, within).logLikelihood(restricted);
  }

  @Test
  void aDesignThatTakesUpEveryClusterLeavesOnlyTheVarianceWithin() {
    double[] second = new double[9];
    double[] third = new double[9];
    double[] fourth = new double[9];
    for (int i = 0; i < 9; i++) {
      second[i] = CLUSTERS.get(i).equals("B") ? 1 : 0;
      third[i] = CLUSTERS.get(i).equals("C") ? 1 : 0;
      fourth[i] = CLUSTERS.get(i).equals("D") ? 1 : 0;
    }
    ThreeLevelFit fit =
        ThreeLevelModel.fit(
            ClusteredRows.of(
                EffectSample.of(EFFECTS, VARIANCES),
                CLUSTERS,
                List.of(ONES, second, third, fourth)),
            true);
    assertEquals(ThreeLevelFit.Told.ONLY_WITHIN, fit.told());
    assertTrue(fit.betweenVariance().isEmpty());
    assertTrue(fit.withinVariance().isPresent());
    assertTrue(fit.converged());
  }

  @Test
  void asManyTermsAsRowsOrDependentTermsAreRefused() {
    EffectSample two = EffectSample.of(List.of(1.0, 2.0), List.of(0.1, 0.1));
    double[] ones = {1, 1};
    double[] more = {1, 2};
    ClusteredRows full = ClusteredRows.of(two, List.of("A", "A"), List.of(ones, more));
    assertThrows(IllegalArgumentException.class, () -> ThreeLevelModel.fit(full, true));
    ClusteredRows dependent =
        ClusteredRows.of(
            EffectSample.of(EFFECTS, VARIANCES), CLUSTERS, List.of(ONES, ONES.clone()));
    assertThrows(IllegalArgumentException.class, () -> ThreeLevelModel.fit(dependent, true));
  }

  private static ClusteredRows random(Random random, boolean moderator) {
    int k = 4 + random.nextInt(12);
    double spread = 0.1 + random.nextInt(3);
    double[] shared = random.doubles(k, -spread, spread).toArray();
    List<Double> effects = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    List<String> clusters = new ArrayList<>();
    double[] ones = new double[k];
    double[] length = new double[k];
    for (int i = 0; i < k; i++) {
      int cluster = random.nextInt(1 + k / 2);
      clusters.add("c" + cluster);
      effects.add(shared[cluster] + random.nextGaussian() * random.nextInt(3));
      variances.add(Math.pow(10, random.nextDouble() * 4 - 3));
      ones[i] = 1;
      length[i] = random.nextGaussian();
    }
    return ClusteredRows.of(
        EffectSample.of(effects, variances),
        clusters,
        moderator ? List.of(ones, length) : List.of(ones));
  }
}
