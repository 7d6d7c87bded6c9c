package gapwise.synthesis.heterogeneity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Limits of a further value with one or two standard deviations not known. */
class UnknownSpreadTest {
  /**
   * k values without errors of their own, squares S about their mean: the likelihood is that of k -
   * 1 normal values, and every sigma alike makes a further value t on k - 2 with the scale
   * root(S/(k - 2) (1 + 1/k)), in closed form.
   */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 10, 100, 3000})
  void valuesWithoutErrorsGiveStudentT(int k) {
    double squares = 4.5 * (k - 1);
    UnknownSpread spread =
        UnknownSpread.ofOne(
                sigma -> -(k - 1) * Math.log(sigma) - squares / (2 * sigma * sigma), 0.7, 2)
            .orElseThrow();
    double[] means = new double[spread.points().size()];
    Arrays.fill(means, 1e6);
    double[] deviations =
        spread.points().stream().mapToDouble(p -> p.first() * Math.sqrt(1 + 1.0 / k)).toArray();
    Interval found = spread.limits(means, deviations, 0.95);
    double half =
        TDistribution.of(k - 2.0).inverseCumulativeProbability(0.975)
            * Math.sqrt(squares / (k - 2) * (1 + 1.0 / k));
    assertEquals(1e6 + half, found.upper(), 1e-7 * half + 1e-9);
    assertEquals(1e6 - half, found.lower(), 1e-7 * half + 1e-9);
  }

  /** The same whatever the unit, and wherever the search starts. */
  @ParameterizedTest
  @CsvSource({"1, 0", "1e-8, 0", "1e9, 1e9", "1, 50"})
  void neitherUnitNorStartMatter(double unit, double top) {
    UnknownSpread spread =
        UnknownSpread.ofOne(
                sigma -> {
                  double variance = 0.3 + sigma / unit * (sigma / unit);
                  return -3 * Math.log(variance) - 2 / variance;
                },
                unit,
                top)
            .orElseThrow();
    double[] deviations =
        spread.points().stream().mapToDouble(p -> Math.hypot(p.first(), 0.1 * unit)).toArray();
    double upper = spread.limits(new double[deviations.length], deviations, 0.95).upper() / unit;
    // By SciPy's quad and brentq on the same density and normal points.
    assertEquals(1.9199407778205142, upper, 1e-9);
  }

  /** Two that are independent: each has the shares it has alone. */
  @ParameterizedTest
  @ValueSource(ints = {4, 7, 40})
  void twoThatDoNotMeetAreTwoAlone(int k) {
    UnknownSpread two =
        UnknownSpread.ofTwo((a, b) -> one(a, k) + one(b, 6), 0.7, 2, 2).orElseThrow();
    UnknownSpread alone = UnknownSpread.ofOne(a -> one(a, k), 0.7, 2).orElseThrow();
    double[] first = two.points().stream().mapToDouble(UnknownSpread.Point::first).toArray();
    double[] expected = alone.points().stream().mapToDouble(UnknownSpread.Point::first).toArray();
    assertEquals(
        alone.limits(new double[expected.length], expected, 0.9).upper(),
        two.limits(new double[first.length], first, 0.9).upper(),
        1e-6);
    assertTrue(two.points().stream().allMatch(point -> point.second() > 0));
  }

  private static double one(double sigma, int k) {
    return -(k - 1) * Math.log(sigma) - 4.5 * (k - 1) / (2 * sigma * sigma);
  }
}
