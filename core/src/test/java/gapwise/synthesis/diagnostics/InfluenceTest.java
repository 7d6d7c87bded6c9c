package gapwise.synthesis.diagnostics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.testing.BcgTrials;
import gapwise.synthesis.testing.Pooling;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InfluenceTest {
  private static final EffectSample TRIALS = BcgTrials.logOddsRatios();

  private static Influence common(EffectSample sample) {
    return Influence.of(sample, Pooling.commonEffect());
  }

  private static double weightSum() {
    return IntStream.range(0, 13).mapToDouble(i -> 1 / TRIALS.variance(i)).sum();
  }

  /** By {@code small_rooms.py} of the reference scripts, in NumPy, to half of its last digit. */
  @ParameterizedTest(name = "without study {0}")
  @CsvSource({
    "3, -0.659143803, 0.271154470, -1.401323587, 0.210680517, 0.872413655, 0.095601333",
    "7, -0.825857223, 0.251451689,  1.566451199, 0.166555819, 0.829103198, 0.099810899"
  })
  void ofRandomEffectsIsThatOfPoolingAnew(
      int place,
      double mean,
      double tauSquared,
      double studentised,
      double cook,
      double ratio,
      double share) {
    Influence all = Influence.of(TRIALS, Pooling.randomEffects("dersimonian-laird"));
    Influence.Diagnostic found = all.diagnostics().get(place);
    assertEquals(mean, all.withoutEach().get(place).mean().orElseThrow().estimate(), 5e-10);
    assertEquals(tauSquared, all.withoutEach().get(place).tauSquared().orElseThrow(), 5e-10);
    assertEquals(studentised, found.studentisedResidual(), 5e-10);
    assertEquals(cook, found.cooksDistance(), 5e-10);
    assertEquals(ratio, found.covarianceRatio(), 5e-10);
    assertEquals(share, found.leverage(), 5e-10);
  }

  @Test
  void ofACommonEffectHasTheCovarianceRatioOfTheWeights() {
    // W/(W - w): what is left of the information.
    List<Influence.Diagnostic> found = common(TRIALS).diagnostics();
    for (int i = 0; i < 13; i++) {
      double rest = weightSum() - 1 / TRIALS.variance(i);
      assertEquals(weightSum() / rest, found.get(i).covarianceRatio(), 1e-10, "study " + i);
    }
  }

  @Test
  void ofACommonEffectHasCooksDistanceByLeverageAndResidual() {
    // m - m_i = h (y - m_i) and var(y - m_i) = v/(1 - h), so D = r^2 h^2 v/(1 - h) W
    // = r^2 h/(1 - h), h the leverage: Cook, Technometrics 1977;19:15, for one coefficient.
    for (Influence.Diagnostic found : common(TRIALS).diagnostics()) {
      double h = found.leverage();
      double r = found.studentisedResidual();
      assertEquals(r * r * h / (1 - h), found.cooksDistance(), 1e-9 * found.cooksDistance());
    }
  }

  @Test
  void leveragesAreSharesOfOne() {
    double sum =
        Influence.of(TRIALS, Pooling.randomEffects("dersimonian-laird")).diagnostics().stream()
            .mapToDouble(Influence.Diagnostic::leverage)
            .sum();
    assertEquals(1, sum, 1e-12);
  }

  @Test
  void contributionsToQSumToQ() {
    // Q of these log odds ratios, sum w y^2 - (sum w y)^2/sum w, which is another way to it.
    double weighted =
        IntStream.range(0, 13).mapToDouble(i -> TRIALS.effect(i) / TRIALS.variance(i)).sum();
    double squares =
        IntStream.range(0, 13)
            .mapToDouble(i -> TRIALS.effect(i) * TRIALS.effect(i) / TRIALS.variance(i))
            .sum();
    double sum =
        common(TRIALS).contributions().stream().mapToDouble(Influence.Contribution::toQ).sum();
    assertEquals(squares - weighted * weighted / weightSum(), sum, 1e-9);
  }

  @Test
  void ofTwoStudiesLeavesTheOther() {
    EffectSample two = EffectSample.of(new double[] {1, 4}, new double[] {1, 2});
    Influence found = common(two);
    assertEquals(4, found.withoutEach().get(0).mean().orElseThrow().estimate(), 1e-15);
    // Weights 1 and 1/2, mean 2; residual (1 - 4)/root(1 + 2); change (2 - 4)/root(2/3).
    assertEquals(-Math.sqrt(3), found.diagnostics().get(0).studentisedResidual(), 1e-14);
    assertEquals(-2 / Math.sqrt(2.0 / 3), found.diagnostics().get(0).standardisedChange(), 1e-14);
  }

  @Test
  void turnsRoundWithTheEffects() {
    EffectSample turned =
        EffectSample.of(
            IntStream.range(0, 13).mapToDouble(i -> -TRIALS.effect(i)).toArray(),
            IntStream.range(0, 13).mapToDouble(TRIALS::variance).toArray());
    Influence.Diagnostic one = common(TRIALS).diagnostics().get(3);
    Influence.Diagnostic other = common(turned).diagnostics().get(3);
    assertEquals(-one.standardisedChange(), other.standardisedChange(), 1e-12);
    assertEquals(one.cooksDistance(), other.cooksDistance(), 1e-12);
  }

  @Test
  void isNotToldWhereTheMeanCannotBe() {
    EffectSample sharp = EffectSample.of(new double[] {1, 2, 3}, new double[] {0, 1, 1});
    assertTrue(common(sharp).diagnostics().isEmpty());
    assertTrue(common(sharp).contributions().isEmpty());
  }

  @Test
  void needsAStudyToRemain() {
    EffectSample one = EffectSample.of(new double[] {1}, new double[] {1});
    assertThrows(IllegalArgumentException.class, () -> common(one));
  }
}
