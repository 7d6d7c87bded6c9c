package gapwise.synthesis.heterogeneity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OneHumpTest {
  private static EffectSample drawn(SplittableRandom random, int k, double tau, double spread) {
    double[] effects = new double[k];
    double[] variances = new double[k];
    for (int i = 0; i < k; i++) {
      variances[i] = 0.3 * Math.exp(spread * random.nextGaussian());
      effects[i] = 1 + Math.sqrt(variances[i] + tau * tau) * random.nextGaussian();
    }
    return EffectSample.of(effects, variances);
  }

  private static double scanned(EffectSample sample, boolean restricted) {
    MeanModel model = GroupMeans.one(sample);
    NormalLikelihood likelihood = new NormalLikelihood(sample, model, restricted);
    return NormalLikelihood.maximum(
            likelihood::at,
            likelihood::slope,
            new GeneralisedQ(sample, model).unweighted(),
            restricted ? sample.size() - 1 : sample.size(),
            sample.variance(sample.mostExact()),
            sample.largestVariance())
        .value();
  }

  @ParameterizedTest
  @CsvSource({"2, 0.99", "5, 0.97", "12, 0.96", "60, 0.97", "300, 0.97"})
  void whatIsProvedToBeTheOnlyTopIsWhereTheWholeRangeHasItsTop(int k, double leastProved) {
    SplittableRandom random = new SplittableRandom(k);
    int proved = 0;
    int asked = 0;
    for (int draw = 0; draw < Math.min(3000, 60_000 / k); draw++) {
      double spread = new double[] {0.3, 1, 2}[draw % 3];
      EffectSample sample = drawn(random, k, new double[] {0, 0.2, 1}[draw / 3 % 3], spread);
      for (boolean restricted : new boolean[] {true, false}) {
        asked++;
        OptionalDouble only = OneHump.of(sample, restricted);
        if (only.isPresent()) {
          proved++;
          double smallest = sample.variance(sample.mostExact());
          double top = scanned(sample, restricted);
          assertEquals(top, only.getAsDouble(), 1e-11 * Math.max(top, 0.1 * smallest));
        }
      }
    }
    assertTrue(proved > leastProved * asked, proved + " of " + asked);
  }

  @Test
  void nothingIsProvedWhereTheLikelihoodHasTwoTops() {
    SplittableRandom random = new SplittableRandom(3);
    int twice = 0;
    for (int draw = 0; draw < 20_000; draw++) {
      EffectSample sample = drawn(random, 3 + draw % 3, 0.5, 2.5);
      if (tops(sample) > 1) {
        twice++;
        assertTrue(OneHump.of(sample, true).isEmpty(), () -> "proved though it has two tops");
      }
    }
    assertTrue(twice > 50, twice + " samples with two tops were drawn");
  }

  /** Falls of the slope through 0 on a grid much finer than a hump is wide. */
  private static int tops(EffectSample sample) {
    double before = OneMeanSums.likelihoodSlope(sample, 0, true);
    int tops = before <= 0 ? 1 : 0;
    for (double at = 1e-6; at < 1e4; at *= 1.1) {
      double slope = OneMeanSums.likelihoodSlope(sample, at, true);
      tops += before > 0 && slope <= 0 ? 1 : 0;
      before = slope;
    }
    return tops;
  }

  /** With equal variances v, restricted likelihood is highest at D/(k - 1) - v: algebra. */
  @Test
  void equalVariancesGiveTheVarianceOfTheEffectsLessTheirOwn() {
    EffectSample sample =
        EffectSample.of(new double[] {1, 4, 2, 7}, new double[] {0.5, 0.5, 0.5, 0.5});
    assertEquals(7 - 0.5, OneHump.of(sample, true).orElseThrow(), 1e-13);
    assertEquals(21.0 / 4 - 0.5, OneHump.of(sample, false).orElseThrow(), 1e-13);
  }

  @Test
  void effectsThatDifferLessThanTheirVariancesExplainGiveNothingBetweenStudies() {
    EffectSample sample = EffectSample.of(new double[] {1, 1.1, 0.9}, new double[] {1, 2, 3});
    assertEquals(OptionalDouble.of(0), OneHump.of(sample, true));
  }

  @Test
  void equalEffectsAreLeftToTheSearchOfTheWholeRange() {
    double[] variances = new double[5];
    Arrays.setAll(variances, i -> 1 + i);
    assertTrue(OneHump.of(EffectSample.of(new double[5], variances), true).isEmpty());
  }

  @Test
  void oneStudyWithNearlyAllTheWeightCostsTheProofAndNotTheAnswer() {
    EffectSample sample =
        EffectSample.of(new double[] {0, 1, -1, 2}, new double[] {1e-14, 0.1, 0.1, 0.1});
    OptionalDouble only = OneHump.of(sample, true);
    double top = scanned(sample, true);
    assertEquals(top, only.orElse(top), 1e-10 * top);
    MeanModel model = GroupMeans.one(sample);
    assertEquals(top, new NormalLikelihood(sample, model, true).maximum().value(), 1e-10 * top);
  }
}
