package gapwise.figure.value;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class EstimateTest {
  /** A ratio of means over one near 0 has limits that no double holds. */
  @Test
  void limitsBeyondAllNumbersAreToldAsFarOff() {
    Estimate ratio = Estimate.of(0.31, 0, Double.POSITIVE_INFINITY);

    assertEquals(0, ratio.lower());
    assertEquals(1e100, ratio.upper());
    assertEquals(-1e100, Estimate.of(0.31, Double.NEGATIVE_INFINITY, 2).lower());
  }
}
