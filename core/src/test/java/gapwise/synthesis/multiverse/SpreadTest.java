package gapwise.synthesis.multiverse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Type 7 of Hyndman and Fan, Am Stat 1996;50:361: the p-th at (n - 1)p, counted from 0. */
class SpreadTest {
  @Test
  void ofFourStandsBetweenThem() {
    // Places 0.75, 1.5 and 2.25 among 1, 2, 4, 8.
    assertEquals(new Spread(4, 1, 1.75, 3, 5, 8), Spread.of(new double[] {4, 1, 8, 2}));
  }

  @Test
  void ofFiveStandsOnThem() {
    assertEquals(new Spread(5, 1, 2, 3, 4, 5), Spread.of(new double[] {5, 3, 1, 2, 4}));
  }

  @Test
  void ofOneIsThatOne() {
    assertEquals(new Spread(1, 7, 7, 7, 7, 7), Spread.of(new double[] {7}));
  }

  @Test
  void leavesTheValuesInTheirOrder() {
    double[] values = {3, 1, 2};
    Spread.of(values);
    assertEquals(3, values[0]);
  }

  @Test
  void needsAValue() {
    assertThrows(IllegalArgumentException.class, () -> Spread.of(new double[0]));
  }

  @Test
  void heavierValuesDrawTheMiddle() {
    // Weights 4, 1, 1, 1, 1 of 8: the places are 0, 4/7, 5/7, 6/7, 1, so a half lies 7/8 of the way
    // from the first value to the second.
    Spread spread = Spread.of(new double[] {0, 10, 20, 30, 40}, new double[] {4, 1, 1, 1, 1});
    assertEquals(8.75, spread.median(), 1e-12);
    assertEquals(0, spread.minimum());
    assertEquals(40, spread.maximum());
  }

  @Test
  void equalWeightsChangeNothing() {
    double[] values = {4, 1, 8, 2};
    assertEquals(Spread.of(values), Spread.of(values, new double[] {0.3, 0.3, 0.3, 0.3}));
  }
}
