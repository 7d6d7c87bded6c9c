package gapwise.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpreadConversionTest {

  /**
   * Worked example of the Cochrane Handbook, section 6.5.2: 25 patients, interval 30.0 to 34.2,
   * standard deviation 5.09 to the two printed digits; derived by
   * core/src/test/reference/constants.py.
   */
  @Test
  void theIntervalOfAMeanGivesTheStandardDeviationOfTheHandbook() {
    assertEquals(5.09, SpreadConversion.fromLimits(30.0, 34.2, 25).orElseThrow(), 0.005);
  }

  @Test
  void aStandardErrorGrowsByTheRootOfThePatients() {
    assertEquals(6, SpreadConversion.fromStandardError(1.5, 16), 1e-12);
  }

  @Test
  void onePatientHasNoInterval() {
    assertTrue(SpreadConversion.fromLimits(1, 2, 1).isEmpty());
    assertTrue(SpreadConversion.fromRange(1, 2, 1).isEmpty());
    assertTrue(SpreadConversion.fromQuartiles(1, 2, 1).isEmpty());
  }

  /**
   * Expectations of normal order statistics, as in Wan and colleagues' tables 1 and 2 (from memory;
   * derived by core/src/test/reference/spread_conversions.py by integration). The formulas lie
   * within 1.5 % of them at 5 patients and within 0.6 % from 9 on.
   */
  @ParameterizedTest
  @CsvSource({"5, 2.325929", "10, 3.077505", "25, 3.930629", "50, 4.498147", "100, 5.015187"})
  void aRangeIsDividedByTheTableOfItsPaper(int n, double divisor) {
    double sd = SpreadConversion.fromRange(4, 4 + divisor, n).orElseThrow();
    assertEquals(1, sd, n < 9 ? 0.015 : 0.006);
  }

  @ParameterizedTest
  @CsvSource({"5, 0.990038", "9, 1.143942", "21, 1.259644", "41, 1.302989", "101, 1.330256"})
  void quartilesAreDividedByTheTableOfTheirPaper(int n, double divisor) {
    double sd = SpreadConversion.fromQuartiles(7, 7 + divisor, n).orElseThrow();
    assertEquals(1, sd, 0.005);
  }

  /** The formulas themselves, by SciPy's normal quantile in the same script. */
  @Test
  void rangeAndQuartilesOfTwentyFivePatientsGiveTheDeviationsOfTheFormulas() {
    assertEquals(3.818316, SpreadConversion.fromRange(4, 19, 25).orElseThrow(), 1e-6);
    assertEquals(3.930591, SpreadConversion.fromQuartiles(7, 12, 25).orElseThrow(), 1e-6);
  }

  /** Drawn from a normal distribution of deviation 2: on average the guess is right to 1 %. */
  @Test
  void ofDrawnNormalValuesTheDeviationComesOutRightAndFiveInAHundredAreWarnedOf() {
    Random random = new Random(20261129);
    int samples = 20_000;
    int n = 20;
    double sum = 0;
    int warned = 0;
    for (int i = 0; i < samples; i++) {
      double[] x = random.doubles(n).map(u -> 10 + 2 * random.nextGaussian()).toArray();
      double low = Arrays.stream(x).min().orElseThrow();
      double high = Arrays.stream(x).max().orElseThrow();
      double mean = Arrays.stream(x).average().orElseThrow();
      sum += SpreadConversion.fromRange(low, high, n).orElseThrow();
      warned += SpreadConversion.rangeLooksSkewed(low, mean, high, n) ? 1 : 0;
    }
    assertEquals(2, sum / samples, 0.02);
    assertEquals(0.05, (double) warned / samples, 0.008);
  }

  @Test
  void aMeanNearOneEndOfItsRangeLooksSkewedAndOneInTheMiddleDoesNot() {
    assertTrue(SpreadConversion.rangeLooksSkewed(4, 7, 24, 20));
    assertFalse(SpreadConversion.rangeLooksSkewed(4, 13, 24, 20));
    assertFalse(SpreadConversion.rangeLooksSkewed(4, 5, 24, 4), "nothing is told of four patients");
    assertTrue(SpreadConversion.quartilesLookSkewed(6, 12, 12.5, 20));
    assertFalse(SpreadConversion.quartilesLookSkewed(6, 9, 12.5, 20));
  }

  @Test
  void limitsOutOfOrderAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromRange(2, 1, 9));
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromQuartiles(1, 2, 0));
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromLimits(2, 1, 9));
    assertThrows(IllegalArgumentException.class, () -> SpreadConversion.fromStandardError(-1, 9));
  }
}
