package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferenceDistributionTest {
  /**
   * Points of Student's t as NIST/SEMATECH, e-Handbook of Statistical Methods, section 1.3.6.7.2,
   * prints them to three decimals, and of the normal distribution in its last line.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0.95, 12.706",
    "2, 0.95, 4.303",
    "4, 0.90, 2.132",
    "9, 0.95, 2.262",
    "9, 0.99, 3.250",
    "30, 0.95, 2.042",
    "100, 0.95, 1.984",
  })
  void pointsAreThoseOfThePrintedTable(double degrees, double level, double printed) {
    double half = 0.0005;
    assertEquals(printed, ReferenceDistribution.studentT(degrees).multiplier(level), half);
    assertEquals(printed, ReferenceDistribution.studentT(degrees).multiplier(level), half);
    assertEquals(1.960, ReferenceDistribution.normal().multiplier(0.95), half);
  }

  /** Levels by turns, so that a point kept for one would show as that of another. */
  @Test
  void aPointThatIsKeptIsTheOneThatIsAskedFor() {
    for (int turn = 0; turn < 3; turn++) {
      for (double level : new double[] {0.5, 0.9, 0.95, 0.95, 0.99}) {
        for (double degrees : new double[] {1, 2.5, 7, 1000, 1001}) {
          assertEquals(
              TDistribution.of(degrees).inverseSurvivalProbability((1 - level) / 2),
              ReferenceDistribution.studentT(degrees).multiplier(level),
              0);
        }
      }
    }
    assertEquals(0, ReferenceDistribution.studentT(3).multiplier(0), 1e-12);
  }

  @Test
  void onlyFewWholeDegreesAreKept() {
    assertSame(ReferenceDistribution.studentT(9), ReferenceDistribution.studentT(9));
    assertNotSame(ReferenceDistribution.studentT(9.5), ReferenceDistribution.studentT(9.5));
    assertNotSame(ReferenceDistribution.studentT(1001), ReferenceDistribution.studentT(1001));
    assertThrows(IllegalArgumentException.class, () -> ReferenceDistribution.studentT(0));
    assertThrows(IllegalArgumentException.class, () -> ReferenceDistribution.studentT(-1));
  }
}
