package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GaussHermiteTest {
  /**
   * Zeros and weights for exp(-x^2) as in Abramowitz and Stegun, Handbook of Mathematical Functions
   * (1964), table 25.10; derived by core/src/test/reference/constants.py.
   */
  @Test
  void nodesAndWeightsAreThoseOfTheHandbook() {
    double root2 = Math.sqrt(2);
    double rootPi = Math.sqrt(Math.PI);
    GaussHermite two = GaussHermite.of(2);
    assertEquals(0.7071067811865, two.node(1) / root2, 1e-12);
    assertEquals(0.8862269254528, two.weight(1) * rootPi, 1e-12);
    GaussHermite five = GaussHermite.of(5);
    assertEquals(2.0201828704561, five.node(4) / root2, 1e-12);
    assertEquals(0.9585724646138, five.node(3) / root2, 1e-12);
    assertEquals(0, five.node(2));
    assertEquals(0.0199532420590, five.weight(4) * rootPi, 1e-12);
    assertEquals(0.3936193231522, five.weight(3) * rootPi, 1e-12);
    assertEquals(0.9453087204829, five.weight(2) * rootPi, 1e-12);
  }

  /** The means of even powers of a standard normal variable are 1, 3, 15, ... (2p - 1)!!. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 25, 61, 100, 199, 200})
  void powersUpToTwiceThePointsHaveTheirMeans(int points) {
    GaussHermite rule = GaussHermite.of(points);
    double expected = 1;
    for (int power = 0; power < Math.min(2 * points, 60); power += 2) {
      double mean = 0;
      for (int i = 0; i < points; i++) {
        mean += rule.weight(i) * Math.pow(rule.node(i), power);
      }
      assertEquals(expected, mean, 1e-11 * expected, points + " points, power " + power);
      expected *= power + 1;
    }
  }

  @Test
  void nodesRiseAndMirrorEachOtherAndLogsStayFinite() {
    GaussHermite rule = GaussHermite.of(GaussHermite.MOST_POINTS);
    for (int i = 0; i < rule.points(); i++) {
      assertEquals(-rule.node(i), rule.node(rule.points() - 1 - i));
      assertTrue(i == 0 || rule.node(i) > rule.node(i - 1));
      assertTrue(Double.isFinite(rule.logWeight(i)) && Double.isFinite(rule.logScaledWeight(i)));
    }
    assertThrows(IllegalArgumentException.class, () -> GaussHermite.of(0));
    assertThrows(IllegalArgumentException.class, () -> GaussHermite.of(201));
  }
}
