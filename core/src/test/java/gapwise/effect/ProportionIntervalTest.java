package gapwise.effect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Limits as Newcombe prints them, Stat Med 1998;17:857, table I: four decimals, so half of the last
 * digit is the tolerance. Derived from the definition of each method by
 * core/src/test/reference/proportion_intervals.py.
 */
class ProportionIntervalTest {
  private static final double HALF_A_DIGIT = 5.001e-5;

  @ParameterizedTest
  @CsvSource({
    "wald,81,263,0.2522,0.3638",
    "wilson,81,263,0.2553,0.3662",
    "wilson-continuity-corrected,81,263,0.2535,0.3682",
    "clopper-pearson,81,263,0.2527,0.3676",
    "mid-p,81,263,0.2544,0.3658",
    "likelihood-ratio,81,263,0.2542,0.3655",
    "wald,15,148,0.0527,0.1500",
    "wilson,15,148,0.0624,0.1605",
    "wilson-continuity-corrected,15,148,0.0598,0.1644",
    "clopper-pearson,15,148,0.0578,0.1617",
    "mid-p,15,148,0.0601,0.1581",
    "likelihood-ratio,15,148,0.0596,0.1567",
    "wald,0,20,0,0",
    "wilson,0,20,0,0.1611",
    "wilson-continuity-corrected,0,20,0,0.2005",
    "clopper-pearson,0,20,0,0.1684",
    "mid-p,0,20,0,0.1391",
    "likelihood-ratio,0,20,0,0.0916",
    "wilson,1,29,0.0061,0.1718",
    "wilson-continuity-corrected,1,29,0.0018,0.1963",
    "clopper-pearson,1,29,0.0009,0.1776",
    "mid-p,1,29,0.0017,0.1585",
    "likelihood-ratio,1,29,0.0020,0.1432",
  })
  void limitsAgreeWithNewcombesTable(
      String method, int events, int total, double lower, double upper) {
    Interval interval = named(method).of(new ArmCounts(events, total), 0.95);
    assertEquals(lower, interval.lower(), HALF_A_DIGIT);
    assertEquals(upper, interval.upper(), HALF_A_DIGIT);
  }

  private static ProportionInterval named(String method) {
    for (ProportionInterval one : ProportionInterval.values()) {
      if (one.word().equals(method)) {
        return one;
      }
    }
    throw new AssertionError("no method " + method);
  }

  @ParameterizedTest
  @EnumSource(ProportionInterval.class)
  void swappingEventsAndNonEventsMirrorsTheInterval(ProportionInterval method) {
    for (int[] x : new int[][] {{0, 7}, {1, 7}, {3, 7}, {7, 7}, {1, 1}, {400_000, 1_000_000}}) {
      Interval one = method.of(new ArmCounts(x[0], x[1]), 0.95);
      Interval other = method.of(new ArmCounts(x[1] - x[0], x[1]), 0.95);
      assertEquals(one.lower(), 1 - other.upper(), 1e-12);
      assertEquals(one.upper(), 1 - other.lower(), 1e-12);
      assertTrue(one.lower() <= (double) x[0] / x[1] + 1e-15, method + " below the proportion");
    }
  }

  @Test
  void aHigherLevelGivesAWiderInterval() {
    for (ProportionInterval method : ProportionInterval.values()) {
      Interval narrow = method.of(new ArmCounts(3, 17), 0.8);
      Interval wide = method.of(new ArmCounts(3, 17), 0.99);
      assertTrue(wide.lower() < narrow.lower() && narrow.upper() < wide.upper(), method.word());
    }
  }

  @Test
  void nineOfNineHasAnExactLowerLimitInClosedForm() {
    // Clopper and Pearson 1934: with all events the lower limit is (alpha/2)^(1/n).
    Interval interval = ProportionInterval.CLOPPER_PEARSON.of(new ArmCounts(9, 9), 0.95);
    assertEquals(Math.pow(0.025, 1 / 9.0), interval.lower(), 1e-13);
    assertEquals(1, interval.upper());
  }

  /** Limits of a count of 1, 4, 10 and 137 over 24.19893: poisson.test of R 4, default interval. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 0.02531780798, 5.571643391",
    "4, 1, 1.089865374, 10.24158868",
    "10, 1, 4.795388696, 18.39035604",
    "137, 24.19893, 4.7531248, 6.6927093"
  })
  void anExactRateIntervalIsThatOfAnotherProgram(
      double events, double time, double lower, double upper) {
    Interval interval = RateInterval.EXACT_POISSON.of(new ArmRate(events, time), 0.95);
    // ten or eight digits are printed
    assertEquals(lower, interval.lower(), 1e-8 * upper);
    assertEquals(upper, interval.upper(), 1e-8 * upper);
  }

  @Test
  void anExactRateIntervalCoversTheClosedFormAtNoEvents() {
    // Garwood 1936: with no event the upper limit is -log(alpha/2) over the person-time.
    Interval interval = RateInterval.EXACT_POISSON.of(new ArmRate(0, 450), 0.95);
    assertEquals(0, interval.lower());
    assertEquals(-Math.log(0.025) / 450, interval.upper(), 1e-14);
  }

  @Test
  void theWayBackFromTheDoubleArcsineUndoesIt() {
    for (int n : List.of(1, 7, 40, 1_000_000)) {
      for (int x : List.of(0, 1, n / 3, n - 1, n)) {
        double value = DoubleArcsine.of(new ArmCounts(x, n));
        assertEquals((double) x / n, DoubleArcsine.toProportion(value, n), 1e-9, x + " of " + n);
      }
    }
  }
}
