package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.LogGamma;
import org.junit.jupiter.api.Test;

class StepSumsTest {
  private static double oneByOne(double[] counts, DoubleUnaryOperator function) {
    double sum = 0;
    for (double count : counts) {
      for (int j = 0; j < count; j++) {
        sum += function.applyAsDouble(j);
      }
    }
    return sum;
  }

  /** Counts on both sides of every seam: few, 256, a stretch and its double, some over it. */
  @Test
  void isTheSumOfEveryTermOfEveryCount() {
    double[] counts = {0, 1, 255, 256, 257, 266, 267, 511, 512, 513, 5000, 5000, 65_537};
    for (double slope : new double[] {0, 1e-9, 0.02, 1, 40}) {
      DoubleUnaryOperator log = j -> Math.log(0.3 + j * slope);
      DoubleUnaryOperator share = j -> j / (0.3 + j * slope) / (0.3 + j * slope);
      double logs = oneByOne(counts, log);
      double shares = oneByOne(counts, share);
      assertEquals(logs, StepSums.of(counts).of(log), 1e-12 * Math.abs(logs));
      assertEquals(shares, StepSums.of(counts).of(share), 1e-12 * shares);
    }
  }

  /** log(1 + 2 + ... steps): log Gamma(n + 1), here of half a million; DLMF 5.4.1. */
  @Test
  void sumsOfLogsAreTheLogarithmOfFactorials() {
    double n = 500_000;
    double factorial = LogGamma.value(n + 1);
    assertEquals(
        factorial, StepSums.of(new double[] {n}).of(j -> Math.log(j + 1)), 1e-13 * factorial);
  }

  @Test
  void theOrderOfCountsDoesNotTouchTheLastDigit() {
    DoubleUnaryOperator log = j -> Math.log(0.1 + 0.7 * j);
    assertEquals(
        StepSums.of(new double[] {700, 3, 1e6, 400}).of(log),
        StepSums.of(new double[] {1e6, 400, 700, 3}).of(log));
  }

  @Test
  void refusesWhatIsNoCount() {
    for (double count : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThrows(IllegalArgumentException.class, () -> StepSums.of(new double[] {count, 1}));
    }
  }
}
