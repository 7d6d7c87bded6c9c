package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.numeric.BracketedRoot.Root;
import org.junit.jupiter.api.Test;

class BracketedRootTest {
  @Test
  void theRootOfACubicIsFoundToTheLastDigits() {
    // x^3 - 2x - 5 at 2.0945514815423265, Wallis's equation; derived by Cardano's formula in
    // core/src/test/reference/constants.py.
    Root root = BracketedRoot.find(x -> x * x * x - 2 * x - 5, 2, 3);
    assertTrue(root.converged());
    assertEquals(2.0945514815423265, root.value(), 1e-15);
  }

  @Test
  void theBracketThatIsReportedHoldsAChangeOfSign() {
    for (double shift : new double[] {1e-300, 1e-9, 0.3, 1, 1e6, 1e100}) {
      Root root = BracketedRoot.find(x -> Math.cbrt(x - shift), -1, 2e100);
      assertTrue(root.converged(), "shift " + shift);
      assertTrue(Math.cbrt(root.lower() - shift) <= 0);
      assertTrue(Math.cbrt(root.upper() - shift) >= 0);
    }
  }

  @Test
  void aFlatFunctionWithOneSteepEndStillConverges() {
    Root root = BracketedRoot.find(x -> Math.expm1(x) - 1e-12, 0, 700);
    assertTrue(root.converged());
    assertEquals(1e-12, root.value(), 1e-14);
  }

  /** log(1 + x/c) is 1 at c (e - 1). */
  @Test
  void aRootFarBelowItsBracketHasItsOwnDigits() {
    for (double scale : new double[] {1e-200, 1e-30, 1e-10, 1, 1e9}) {
      double expected = scale * Math.expm1(1);
      Root root = BracketedRoot.findHoweverSmall(x -> Math.log1p(x / scale) - 1, 0, 1e10);
      assertTrue(root.converged());
      assertEquals(expected, root.value(), 1e-14 * expected);
    }
  }

  @Test
  void aFunctionThatIsInfiniteAtAnEndIsNarrowedDown() {
    Root root = BracketedRoot.find(x -> Math.log(x) + 3, 0, 1);
    assertEquals(Math.exp(-3), root.value(), 1e-16);
  }

  @Test
  void withoutAChangeOfSignTheCallerIsToldOfTheMistake() {
    assertThrows(IllegalArgumentException.class, () -> BracketedRoot.find(x -> x * x + 1, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> BracketedRoot.find(x -> Double.NaN, -1, 1));
    assertThrows(IllegalArgumentException.class, () -> BracketedRoot.find(x -> x, 1, -1));
  }

  @Test
  void theHighestOfTwoHumpsIsTaken() {
    // Two bells at 1 and 50, the second twice as high.
    ScannedMaximum.Maximum maximum =
        ScannedMaximum.find(
            x -> bell(x - 1) + 2 * bell((x - 50) / 10),
            x -> -2 * (x - 1) * bell(x - 1) - 2 * 2 * (x - 50) / 100 * bell((x - 50) / 10),
            100);
    assertTrue(maximum.converged());
    assertEquals(50, maximum.place(), 1e-9);
  }

  private static double bell(double x) {
    return Math.exp(-x * x);
  }

  @Test
  void aSumKeepsSmallTermsBesideALargeOne() {
    double[] terms = {1e16, 1, 1, 1, 1, -1e16};
    assertEquals(4, TermSum.of(terms.length, i -> terms[i]));
  }

  @Test
  void betaQuantilesKeepTheirDigitsNearZero() {
    // With one event in n the exact lower limit is 1 - (1 - tail)^(1/n) in closed form.
    for (double n : new double[] {2, 50, 1e6}) {
      double exact = -Math.expm1(Math.log1p(-0.025) / n);
      assertEquals(exact, BetaQuantile.lowerTail(0.025, 1, n), 1e-12 * exact);
    }
  }
}
