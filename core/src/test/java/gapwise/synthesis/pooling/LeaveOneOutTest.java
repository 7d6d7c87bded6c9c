package gapwise.synthesis.pooling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquaredEstimator;
import gapwise.synthesis.heterogeneity.TauSquaredEstimators;
import gapwise.synthesis.heterogeneity.TauSquaredInterval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Sums without a study against a fit of its own, which the published checks hold to other people's
 * numbers.
 */
class LeaveOneOutTest {
  /** Results of the two ways agree to this share of their size. */
  private static final double SHARE = 1e-9;

  private static EffectSample sample(
      int k, IntToDoubleFunction effect, IntToDoubleFunction variance) {
    List<Double> effects = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    for (int i = 0; i < k; i++) {
      variances.add(variance.applyAsDouble(i));
      effects.add(effect.applyAsDouble(i));
    }
    return EffectSample.of(effects, variances);
  }

  private static EffectSample drawn(
      long seed, int k, double centre, double tau, double leastLog, double mostLog) {
    Random random = new Random(seed);
    double[] variances = new double[k];
    double[] effects = new double[k];
    for (int i = 0; i < k; i++) {
      variances[i] = Math.pow(10, leastLog + (mostLog - leastLog) * random.nextDouble());
      effects[i] =
          centre + tau * random.nextGaussian() + Math.sqrt(variances[i]) * random.nextGaussian();
    }
    return sample(k, i -> effects[i], i -> variances[i]);
  }

  private static EffectSample with(EffectSample sample, int place, double effect, double variance) {
    return sample(
        sample.size(),
        i -> i == place ? effect : sample.effect(i),
        i -> i == place ? variance : sample.variance(i));
  }

  static Stream<Arguments> samples() {
    return Stream.of(
        Arguments.of("as usual", drawn(1, 120, 0.3, 0.4, -2, 0)),
        Arguments.of("as usual, three studies", drawn(2, 3, 0.3, 0.4, -2, 0)),
        Arguments.of("without variance between studies", drawn(3, 90, -1, 0, -2, 0)),
        Arguments.of("variances over twelve powers of ten", drawn(4, 80, 0, 1e-2, -6, 6)),
        Arguments.of("tiny variances", drawn(5, 60, 0, 1e-6, -13, -11)),
        Arguments.of("effects far from 0", drawn(6, 70, 1e6, 0.3, -2, 0)),
        Arguments.of("one with the weight", with(drawn(7, 60, 0, 0.3, -1, 1), 9, 0.2, 1e-9)),
        Arguments.of("one far off", with(drawn(8, 60, 0, 0.3, -2, 0), 9, 1e4, 0.1)),
        Arguments.of("equal effects", sample(50, i -> 0.7, i -> 0.1 + i)),
        Arguments.of("equal but for one", sample(50, i -> i == 4 ? 3 : 0.7, i -> 0.1 + i)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("samples")
  void sumsGiveWhatARefitGives(String name, EffectSample sample) {
    List<Optional<TauSquaredEstimator>> estimators = new ArrayList<>();
    estimators.add(Optional.empty());
    TauSquaredEstimators.all().forEach(one -> estimators.add(Optional.of(one)));
    for (Optional<TauSquaredEstimator> estimator : estimators) {
      PoolingSettings settings =
          new PoolingSettings(
              estimator,
              estimator.isPresent() ? MeanIntervals.all().get(0) : MeanIntervals.normal(),
              new Prediction(Prediction.Reference.NORMAL, Prediction.Error.SUM_OF_WEIGHTS),
              TauSquaredInterval.Q_PROFILE,
              0.95);
      List<PooledValue> refitted = LeaveOneOut.refitted(sample, settings);
      List<PooledValue> fromSums = LeaveOneOut.fromSums(sample, settings);
      String of = name + " " + estimator.map(TauSquaredEstimator::name).orElse("common");
      for (int i = 0; i < sample.size(); i++) {
        agree(refitted.get(i), fromSums.get(i), sample, of + " without " + i);
      }
    }
  }

  private static void agree(PooledValue a, PooledValue b, EffectSample sample, String where) {
    assertEquals(a.studies(), b.studies(), where);
    assertEquals(a.mean().isPresent(), b.mean().isPresent(), where);
    double variance = sample.largestVariance();
    agree(a.q(), b.q(), 0, where + " q");
    // A variance between studies matters beside those within them.
    agree(a.tauSquared(), b.tauSquared(), 1e-3 * variance, where + " tau squared");
    agree(a.modelStandardError(), b.modelStandardError(), 0, where + " error");
    if (a.mean().isPresent()) {
      PooledMean one = a.mean().get();
      PooledMean other = b.mean().get();
      double error = a.modelStandardError().getAsDouble();
      near(one.estimate(), other.estimate(), error, where + " estimate");
      near(one.interval().lower(), other.interval().lower(), error, where + " lower");
    }
  }

  private static void agree(OptionalDouble a, OptionalDouble b, double size, String where) {
    assertEquals(a.isPresent(), b.isPresent(), where);
    if (a.isPresent()) {
      near(a.getAsDouble(), b.getAsDouble(), size, where);
    }
  }

  private static void near(double a, double b, double size, String where) {
    assertTrue(Double.isFinite(b), where);
    // effects are known to one part in 10^16 of their own size
    assertEquals(a, b, SHARE * Math.max(size, Math.abs(a)) + 1e-25, where);
  }

  @Test
  void tenThousandStudiesAreLeftOutInTurnByTheirSums() {
    EffectSample sample = drawn(9, 10_000, 0.3, 0.4, -2, 0);
    PoolingSettings settings =
        new PoolingSettings(
            Optional.of(TauSquaredEstimators.all().get(0)),
            MeanIntervals.all().get(0),
            new Prediction(Prediction.Reference.T_K_MINUS_2, Prediction.Error.SUM_OF_WEIGHTS),
            TauSquaredInterval.Q_PROFILE,
            0.95);
    List<PooledValue> without = LeaveOneOut.of(sample, settings);
    assertEquals(10_000, without.size());
    for (int i : new int[] {0, 4_321, 9_999}) {
      Pooled refit = InverseVariance.pool(sample.without(i), settings);
      agree(PooledValue.of(refit, 9_999), without.get(i), sample, "without " + i);
    }
  }
}
