package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleSupplier;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ExponentialDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class RandomValuesTest {
  private static final int N = 100_000;

  /**
   * The greatest distance between the shares below each value, drawn and by the library's law.
   * Kolmogorov: above 1.95 over root n in 1 of 1,000 seeds (Smirnov's table, from memory).
   */
  private static void follows(DoubleSupplier draw, DoubleUnaryOperator below) {
    double[] drawn = new double[N];
    Arrays.setAll(drawn, i -> draw.getAsDouble());
    Arrays.sort(drawn);
    double farthest = 0;
    for (int i = 0; i < N; i++) {
      farthest = Math.max(farthest, Math.abs(below.applyAsDouble(drawn[i]) - (i + 0.5) / N));
    }
    assertTrue(farthest < 1.95 / Math.sqrt(N), "distance " + farthest);
  }

  @Test
  void valuesFollowTheirLaws() {
    RandomValues random = RandomValues.ofSeed(1);
    follows(random::normal, NormalDistribution.of(0, 1)::cumulativeProbability);
    follows(random::exponential, ExponentialDistribution.of(1)::cumulativeProbability);
    for (double shape : new double[] {0.3, 1, 2.5, 400}) {
      follows(() -> random.gamma(shape), GammaDistribution.of(shape, 1)::cumulativeProbability);
    }
    follows(() -> random.beta(0.5, 0.7), BetaDistribution.of(0.5, 0.7)::cumulativeProbability);
    follows(() -> random.beta(153, 48), BetaDistribution.of(153, 48)::cumulativeProbability);
  }

  @Test
  void oneSeedGivesTheSameValues() {
    RandomValues one = RandomValues.ofSeed(8);
    RandomValues other = RandomValues.ofSeed(8);
    for (int i = 0; i < 100; i++) {
      assertEquals(one.gamma(0.7), other.gamma(0.7));
      assertEquals(one.below(5), other.below(5));
    }
    assertThrows(IllegalArgumentException.class, () -> one.gamma(0));
  }
}
