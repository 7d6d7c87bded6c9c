package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GammaQuantileTest {
  /** SciPy 1.17.1, gammaincinv and gammainccinv; the last digit printed may be off. */
  @ParameterizedTest
  @CsvSource({
    "0.5, 0.025, 0.0004910345585876278, 2.511943093657445",
    "0.5, 0.0005, 1.9634956655146132e-07, 6.057832573198587",
    "3, 0.025, 0.6186721228956014, 7.224687667723961",
    "3, 0.0005, 0.14970384992316443, 12.051399497491746",
    "40, 0.025, 28.576586441788965, 53.31428386583285",
    "40, 0.0005, 22.395524247624408, 64.13065609434386",
    "2500, 0.025, 2402.952365431124, 2598.9418859618986",
    "2500, 0.0005, 2338.742316229679, 2667.808988095374",
    "1000000.0, 0.025, 998040.9833402939, 1001960.9109654503",
    "1000000.0, 0.0005, 996712.748773537, 1003293.8029362274",
    "100000000.0, 0.025, 99980401.30732474, 100019600.58698115",
    "100000000.0, 0.0005, 99967098.00850548, 100032908.54320529"
  })
  void agreesWithAnIndependentLibrary(double shape, double tail, double lower, double upper) {
    assertEquals(lower, GammaQuantile.lowerTail(tail, shape), 1e-12 * lower);
    assertEquals(upper, GammaQuantile.upperTail(tail, shape), 1e-12 * upper);
  }

  @Test
  void ofShapeOneItIsTheLogarithm() {
    for (double tail : new double[] {1e-9, 0.025, 0.5, 0.975}) {
      assertEquals(-Math.log1p(-tail), GammaQuantile.lowerTail(tail, 1), 1e-14);
      assertEquals(-Math.log(tail), GammaQuantile.upperTail(tail, 1), 1e-13);
    }
  }

  /**
   * Cornish and Fisher's expansion, a + z root a + (z^2 - 1)/3 + (z^3 - 7z)/(36 root a): Johnson,
   * Kotz and Balakrishnan, Continuous Univariate Distributions, 1994, section 17.5.
   */
  @Test
  void ofCountsBeyondAnyTheLimitsAreThoseOfTheExpansion() {
    double z = 1.959963984540054;
    for (double a : new double[] {1e11, 1e14}) {
      double root = Math.sqrt(a);
      double middle = a + (z * z - 1) / 3;
      double half = z * root + (z * z * z - 7 * z) / (36 * root);
      assertEquals(middle - half, GammaQuantile.lowerTail(0.025, a), 4 * Math.ulp(a));
      assertEquals(middle + half, GammaQuantile.upperTail(0.025, a), 4 * Math.ulp(a));
    }
  }
}
