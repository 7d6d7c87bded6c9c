package gapwise.synthesis.regression;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RestrictedCubicSplineTest {
  private static final RestrictedCubicSpline CURVE =
      new RestrictedCubicSpline(List.of(2.0, 4.0, 8.0));

  @Test
  void theSecondTermIsDurrlemanAndSimonsByHand() {
    // (4^3 - 2^3 (8-2)/(8-4) + 0) / (8-2)^2 = 52/36 at x = 6; (7^3 - 5^3 1.5 + 1 (2/4)) / 36 at 9.
    assertArrayEquals(new double[] {6, 52.0 / 36}, CURVE.at(6), 1e-15);
    assertArrayEquals(new double[] {9, (343 - 187.5 + 0.5) / 36}, CURVE.at(9), 1e-14);
    assertArrayEquals(new double[] {1, 0}, CURVE.at(1), 0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {8, 10, 50})
  void itIsStraightBeyondTheLastKnot(double x) {
    double step = CURVE.at(x + 1)[1] - CURVE.at(x)[1];
    assertEquals(CURVE.at(9)[1] - CURVE.at(8)[1], step, 1e-12 * Math.pow(x, 3));
  }

  @Test
  void knotsThatDoNotRiseAreRefused() {
    assertThrows(
        IllegalArgumentException.class, () -> new RestrictedCubicSpline(List.of(1.0, 1.0, 2.0)));
    assertThrows(
        IllegalArgumentException.class, () -> new RestrictedCubicSpline(List.of(1.0, 2.0)));
  }
}
