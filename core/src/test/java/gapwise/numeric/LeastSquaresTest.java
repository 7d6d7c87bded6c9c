package gapwise.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Certified values of the National Institute of Standards and Technology, Statistical Reference
 * Datasets, linear regression (nist-strd/source.md), and what must hold for any rows.
 */
class LeastSquaresTest {
  /** A fit of a data set, with the weights all 1. */
  private record Fitted(double[] coefficients, double[] deviations) {}

  /**
   * Digits in common with the certified value, as the institute counts them: -log10 of the relative
   * distance. Certified values have 15 digits, so no more can be shown. For Filip, powers of x are
   * rounded before they are rows, which by itself leaves eight.
   */
  private static double digits(double certified, double found) {
    double distance = Math.abs(found - certified) / (certified == 0 ? 1 : Math.abs(certified));
    return distance == 0 ? 15 : Math.min(15, -Math.log10(distance));
  }

  @ParameterizedTest
  @CsvSource({
    "longley, 14, 14",
    "pontius, 13, 13",
    "filip, 7, 7",
    "wampler1, 14, 14",
    "wampler2, 13, 14",
    "wampler3, 14, 14",
    "wampler4, 14, 14",
    "wampler5, 14, 14"
  })
  void certifiedValuesAreMetToTheirDigits(String name, double digits, double deviationDigits)
      throws IOException {
    Fitted fitted = fit(name);
    for (String[] line : table("certified.csv")) {
      if (line[0].equals(name)) {
        int column = Integer.parseInt(line[1]);
        double found = digits(Double.parseDouble(line[2]), fitted.coefficients()[column]);
        assertTrue(found >= digits, () -> name + " coefficient " + column + ": " + found);
        double spread = digits(Double.parseDouble(line[3]), fitted.deviations()[column]);
        assertTrue(spread >= deviationDigits, () -> name + " deviation " + column + ": " + spread);
      }
    }
  }

  private static Fitted fit(String name) throws IOException {
    List<double[]> rows = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    boolean wampler = name.startsWith("wampler");
    for (String[] line : table(wampler ? "wampler.csv" : name + ".csv")) {
      int y = wampler ? Integer.parseInt(name.substring(7)) : 0;
      values.add(Double.parseDouble(line[y]));
      if (name.equals("longley")) {
        rows.add(Arrays.stream(line).mapToDouble(Double::parseDouble).toArray());
        rows.get(rows.size() - 1)[0] = 1;
      } else {
        double x = Double.parseDouble(line[wampler ? 0 : 1]);
        rows.add(powers(x, wampler ? 5 : name.equals("filip") ? 10 : 2));
      }
    }
    double[] y = values.stream().mapToDouble(Double::doubleValue).toArray();
    double[] ones = new double[y.length];
    Arrays.fill(ones, 1);
    LeastSquares squares = LeastSquares.of(flat(rows), rows.get(0).length, ones);
    LeastSquares.Solution solution = squares.solve(y);
    double[][] inverse = squares.inverse();
    double sum = TermSum.of(y.length, i -> square(solution.residual(i)));
    double[] coefficients = new double[inverse.length];
    double[] deviations = new double[inverse.length];
    for (int j = 0; j < inverse.length; j++) {
      coefficients[j] = solution.coefficient(j);
      deviations[j] = Math.sqrt(sum / (y.length - inverse.length) * inverse[j][j]);
    }
    return new Fitted(coefficients, deviations);
  }

  private static double[] powers(double x, int degree) {
    double[] powers = new double[degree + 1];
    powers[0] = 1;
    for (int i = 1; i <= degree; i++) {
      powers[i] = powers[i - 1] * x;
    }
    return powers;
  }

  private static double square(double x) {
    return x * x;
  }

  private static double[] flat(List<double[]> rows) {
    return rows.stream().flatMapToDouble(Arrays::stream).toArray();
  }

  private static List<String[]> table(String name) throws IOException {
    try (InputStream in = LeastSquaresTest.class.getResourceAsStream("/nist-strd/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(","))
          .toList();
    }
  }

  @Test
  void aRowOfWeightTwoIsTheSameAsTheRowTwice() {
    double[] once = {1, 2, 1, 5, 1, 7, 1, 11};
    double[] twice = {1, 2, 1, 5, 1, 5, 1, 7, 1, 11};
    LeastSquares weighted = LeastSquares.of(once, 2, new double[] {1, 2, 1, 1});
    LeastSquares repeated = LeastSquares.of(twice, 2, new double[] {1, 1, 1, 1, 1});
    LeastSquares.Solution one = weighted.solve(new double[] {3, 4, 9, 8});
    LeastSquares.Solution other = repeated.solve(new double[] {3, 4, 4, 9, 8});
    assertEquals(other.coefficient(0), one.coefficient(0), 1e-14);
    assertEquals(other.coefficient(1), one.coefficient(1), 1e-14);
    assertEquals(repeated.logDeterminant(), weighted.logDeterminant(), 1e-14);
    assertEquals(repeated.inverse()[1][1], weighted.inverse()[1][1], 1e-16);
  }

  @Test
  void weightsTwentyFourPowersOfTenApartLeaveTheLightRowsTheirDigits() {
    // Two rows of weight 1e12 fix 1 + x at 0 and at 1; the third coefficient is left to two rows of
    // weight 1e-12, whose weighted mean of y - 1 - x is (3 + 5) / 2 by hand.
    double[] rows = {1, 0, 0, 1, 1, 0, 1, 2, 1, 1, 3, 1};
    double[] weights = {1e12, 1e12, 1e-12, 1e-12};
    LeastSquares.Solution found =
        LeastSquares.of(rows, 3, weights).solve(new double[] {1, 2, 3 + 3, 4 + 5});
    assertEquals(1, found.coefficient(0), 1e-12);
    assertEquals(1, found.coefficient(1), 1e-12);
    assertEquals(4, found.coefficient(2), 1e-12);
  }

  @Test
  void whatARowLeavesOpenIsKnownToItsOwnDigits() {
    // One mean, weights 1e18, 1, 2: 1 - h of the heavy row is (1 + 2) / (1e18 + 3).
    double[] remainders =
        LeastSquares.of(new double[] {1, 1, 1}, 1, new double[] {1e18, 1, 2}).remainders();
    assertEquals(3e-18, remainders[0], 1e-31);
    assertEquals(1, remainders[1], 1e-15);
  }

  @Test
  void theSharesOfRowsAddUpToTheColumns() {
    Random random = new Random(3);
    for (int n = 0; n < 20; n++) {
      int columns = 1 + random.nextInt(5);
      int count = columns + 1 + random.nextInt(20);
      double[] rows = random.doubles(columns * count, -5, 5).toArray();
      double[] weights = random.doubles(count, 0.1, 9).toArray();
      double open = Arrays.stream(LeastSquares.of(rows, columns, weights).remainders()).sum();
      assertEquals(count - columns, open, 1e-12 * count);
    }
  }

  @Test
  void columnsThatAreAllZeroAreNotOfFullRank() {
    assertFalse(LeastSquares.of(new double[] {1, 0, 1, 0}, 2, new double[] {1, 1}).isFullRank());
  }
}
