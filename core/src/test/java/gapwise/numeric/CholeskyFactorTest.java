package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class CholeskyFactorTest {
  /** By hand: [[4, 2], [2, 3]] times (1, 2) is (8, 8); its inverse is [[3, -2], [-2, 4]]/8. */
  @Test
  void aPositiveMatrixIsSolvedAndInverted() {
    CholeskyFactor factor = CholeskyFactor.of(new double[][] {{4, 2}, {2, 3}});

    assertTrue(factor.isProper());
    assertArrayEquals(new double[] {1, 2}, factor.solve(new double[] {8, 8}), 1e-14);
    assertArrayEquals(new double[] {0.375, -0.25}, factor.inverse()[0], 1e-15);
    assertArrayEquals(new double[] {-0.25, 0.5}, factor.inverse()[1], 1e-15);
  }

  @Test
  void oneThatIsNotPositiveSaysSoAndStillSolves() {
    CholeskyFactor factor = CholeskyFactor.of(new double[][] {{1, 2}, {2, 1}});

    assertFalse(factor.isProper());
    assertTrue(Double.isFinite(factor.solve(new double[] {1, 1})[0]));
  }

  @Test
  void noRowsAreNothingToSolve() {
    assertEquals(0, CholeskyFactor.of(new double[0][0]).solve(new double[0]).length);
  }
}
