package gapwise.synthesis.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ComparisonTest {
  @Test
  void hasTheTabledNormalLimits() {
    // Abramowitz and Stegun, table 26.5: 1.95996.
    Comparison comparison = new Comparison(3, 2);
    assertEquals(3 - 2 * 1.95996, comparison.interval(0.95).lower(), 1e-5);
    assertEquals(3 + 2 * 1.95996, comparison.interval(0.95).upper(), 1e-5);
    assertEquals(0.05, new Comparison(1.95996, 1).pValue(), 1e-6);
  }

  @Test
  void seenFromTheOtherSideChangesItsSignOnly() {
    Comparison other = new Comparison(3, 2).reversed();
    assertEquals(-3, other.estimate());
    assertEquals(2, other.standardError());
    assertEquals(new Comparison(3, 2).pValue(), other.pValue());
  }

  @Test
  void lessAnotherAddsVariances() {
    Comparison difference = new Comparison(5, 3).less(new Comparison(1, 4));
    assertEquals(4, difference.estimate());
    assertEquals(5, difference.standardError(), 1e-15);
  }
}
