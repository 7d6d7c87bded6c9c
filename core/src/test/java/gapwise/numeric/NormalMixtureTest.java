package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class NormalMixtureTest {
  private static NormalMixture of(double... triples) {
    int count = triples.length / 3;
    double[] shares = new double[count];
    double[] means = new double[count];
    double[] deviations = new double[count];
    for (int i = 0; i < count; i++) {
      shares[i] = triples[3 * i];
      means[i] = triples[3 * i + 1];
      deviations[i] = triples[3 * i + 2];
    }
    return new NormalMixture(shares, means, deviations);
  }

  @Test
  void ofOneHasTheTabledQuantilesOfTheNormal() {
    // Abramowitz and Stegun, table 26.5: 1.95996 leaves 0.025 above, 1.28155 leaves 0.1.
    NormalMixture one = of(1, 10, 2);
    assertEquals(10 + 2 * 1.95996, one.quantile(0.975), 1e-5);
    assertEquals(10 - 2 * 1.28155, one.quantile(0.1), 1e-5);
  }

  @Test
  void hasTheMomentsOfItsParts() {
    // Mean 0.25 x 0 + 0.75 x 4 = 3; variance 0.25 (1 + 9) + 0.75 (4 + 1) = 6.25.
    NormalMixture two = of(0.25, 0, 1, 0.75, 4, 2);
    assertEquals(3, two.mean(), 1e-15);
    assertEquals(2.5, two.standardDeviation(), 1e-15);
  }

  @Test
  void hasItsMedianInTheMiddleOfEqualHumps() {
    assertEquals(1.5, of(0.5, -4, 1, 0.5, 7, 1).quantile(0.5), 1e-9);
  }

  @Test
  void findsBackWhatLiesBelowAQuantile() {
    NormalMixture two = of(0.9, 0, 1, 0.1, 3, 50);
    for (double p : new double[] {1e-12, 0.01, 0.3, 0.5, 0.77, 0.999}) {
      assertEquals(p, two.below(two.quantile(p)), 1e-13 + 1e-10 * p, "below " + p);
    }
  }

  @Test
  void keepsTheDigitsOfBothTails() {
    // 1 - below would be 0 there; the tail beyond 10 is 7.619853e-24 (erfc(10/root 2)/2, by
    // mpmath).
    assertEquals(7.619853e-24, of(1, 0, 1).above(10), 1e-30);
    assertEquals(7.619853e-24, of(1, 0, 1).below(-10), 1e-30);
  }

  @Test
  void hasTheLogDensityOfItsPartsUpToOneConstant() {
    NormalMixture one = of(1, 0, 2);
    assertEquals(-0.5, one.logDensity(2) - one.logDensity(0), 1e-15);
    // Where exponentials are nothing, their logarithm still is.
    assertEquals(-1e6 / 8, one.logDensity(1000) - one.logDensity(0), 1e-9);
  }
}
