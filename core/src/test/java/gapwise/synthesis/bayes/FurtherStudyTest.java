package gapwise.synthesis.bayes;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A normal value about a normal centre is normal, and its variances add. */
final class FurtherStudyTest {
  private static final double SD = 0.4;

  private static final SmoothDensity CENTRE =
      SmoothDensity.of(
          LogDensity.ofEach(x -> -(x - 1) * (x - 1) / (2 * SD * SD)),
          List.of(1 - 6.2 * SD, 1 + 6.2 * SD),
          Double.NEGATIVE_INFINITY,
          Double.POSITIVE_INFINITY);

  /** On both sides of where the sum changes from one curve to the other, and far from it. */
  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.05, 0.0999, 0.1001, 0.2, 0.4, 0.8, 3, 40})
  void variancesAdd(double tau) {
    FurtherStudy further = new FurtherStudy(CENTRE, tau);
    double variance = SD * SD + tau * tau;
    double top = 1 / Math.sqrt(2 * Math.PI * variance);
    for (double z : new double[] {-4, -2.5, -1, -0.2, 0, 0.7, 1.9, 3.3}) {
      double x = 1 + z * Math.sqrt(variance);
      assertEquals(top * Math.exp(-z * z / 2), further.density(x), 1e-7 * top, "z " + z);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.2, 3})
  void nothingIsFarAway(double tau) {
    FurtherStudy further = new FurtherStudy(CENTRE, tau);
    assertEquals(0, further.density(1 + 60 * Math.hypot(SD, tau)), 1e-300);
    assertEquals(0, further.density(1 - 60 * Math.hypot(SD, tau)), 1e-300);
  }
}
