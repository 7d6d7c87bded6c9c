package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class KendallScoreTest {
  @Test
  void theScoreIsThatOfAllPairsWithAndWithoutTies() {
    Random random = new Random(3);
    for (int run = 0; run < 200; run++) {
      int n = 2 + random.nextInt(12);
      double[] x = random.doubles(n).map(v -> Math.floor(6 * v)).toArray();
      double[] y = random.doubles(n).map(v -> Math.floor(6 * v)).toArray();
      long score = 0;
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < i; j++) {
          score += (long) (Math.signum(x[i] - x[j]) * Math.signum(y[i] - y[j]));
        }
      }
      assertEquals(score, KendallScore.of(x, y).value());
    }
  }

  @Test
  void theExactTailIsCountedOverAllOrders() {
    double[] x = {1, 2, 3, 4, 5, 6};
    List<double[]> orders = new ArrayList<>();
    permute(x.clone(), 0, orders);
    for (double[] y : orders.subList(0, 200)) {
      KendallScore one = KendallScore.of(x, y);
      long low = orders.stream().filter(o -> KendallScore.of(x, o).value() <= one.value()).count();
      long high = orders.stream().filter(o -> KendallScore.of(x, o).value() >= one.value()).count();
      double p = Math.min(1, 2.0 * Math.min(low, high) / orders.size());
      assertEquals(p, one.exactTwoSidedP(), 1e-12);
    }
  }

  private static void permute(double[] values, int from, List<double[]> into) {
    if (from == values.length) {
      into.add(values.clone());
    }
    for (int i = from; i < values.length; i++) {
      swap(values, from, i);
      permute(values, from + 1, into);
      swap(values, from, i);
    }
  }

  private static void swap(double[] values, int a, int b) {
    double kept = values[a];
    values[a] = values[b];
    values[b] = kept;
  }

  @Test
  void tiesGiveTauBAndItsVariance() {
    // By hand: x 1 1 2 3, y 1 2 2 4. Pairs in order 4 (13, 14, 24, 34), none against; tied in x 1,
    // in y 1. tau-b = 4/root(5 5) = 0.8; variance (4 3 13 - 2 9 - ...)/18 = (156 - 18 - 18)/18,
    // plus 2 2/(2 4 3) = 6.8333.
    KendallScore score = KendallScore.of(new double[] {1, 1, 2, 3}, new double[] {1, 2, 2, 4});
    assertEquals(4, score.value());
    assertEquals(0.8, score.tauB().getAsDouble(), 1e-15);
    assertEquals(120.0 / 18 + 4.0 / 24, score.variance(), 1e-12);
    assertTrue(score.tied());
    assertThrows(IllegalStateException.class, score::exactTwoSidedP);
  }

  @Test
  void aListOfEqualValuesHasNoCorrelation() {
    KendallScore score = KendallScore.of(new double[] {1, 1, 1}, new double[] {1, 2, 3});
    assertFalse(score.tauB().isPresent());
  }
}
