package gapwise.synthesis.smallstudy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LeastSquaresLineTest {
  /** The first of the four data sets of Anscombe, Am Stat 1973;27:17. */
  private static final double[] X = {10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};

  private static final double[] Y = {
    8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68
  };

  private static double[] ones(int size) {
    double[] ones = new double[size];
    Arrays.fill(ones, 1);
    return ones;
  }

  private static AsymmetryFinding.Line tested(Optional<AsymmetryFinding> finding) {
    return (AsymmetryFinding.Line) finding.orElseThrow();
  }

  @Test
  void ofAnscombesFirstSetIsAsHePrintsIt() {
    // His page 19: y = 3 + 0.5x, estimated standard error of the slope 0.118, 9 degrees of freedom.
    AsymmetryFinding.Line line =
        tested(LeastSquaresLine.of(X, Y, ones(11)).orElseThrow().testingSlope(""));
    assertEquals(3.00, line.intercept(), 5e-3);
    assertEquals(0.500, line.slope(), 5e-4);
    assertEquals(0.118, line.standardError(), 5e-4);
    assertEquals(9, line.degreesOfFreedom());
  }

  @Test
  void testsTheInterceptAsTheSlopeOfTheTurnedLine() {
    // y/x = slope + intercept/x with weights x^2 is the same line, its coefficients changed over.
    double[] inverse = Arrays.stream(X).map(x -> 1 / x).toArray();
    double[] squares = Arrays.stream(X).map(x -> x * x).toArray();
    double[] shares = new double[Y.length];
    Arrays.setAll(shares, i -> Y[i] / X[i]);
    AsymmetryFinding.Line one =
        tested(LeastSquaresLine.of(X, Y, ones(11)).orElseThrow().testingIntercept(""));
    AsymmetryFinding.Line other =
        tested(LeastSquaresLine.of(inverse, shares, squares).orElseThrow().testingSlope(""));
    assertEquals(one.intercept(), other.slope(), 1e-12);
    assertEquals(one.standardError(), other.standardError(), 1e-12);
    assertEquals(one.pValue(), other.pValue(), 1e-12);
  }

  @Test
  void countsAPointOfWeightTwoAsTwoPoints() {
    double[] weights = ones(11);
    weights[3] = 2;
    double[] x = Arrays.copyOf(X, 12);
    double[] y = Arrays.copyOf(Y, 12);
    x[11] = X[3];
    y[11] = Y[3];
    LeastSquaresLine weighted = LeastSquaresLine.of(X, Y, weights).orElseThrow();
    LeastSquaresLine twice = LeastSquaresLine.of(x, y, ones(12)).orElseThrow();
    assertEquals(twice.slope(), weighted.slope(), 1e-14);
    assertEquals(twice.intercept(), weighted.intercept(), 1e-13);
    assertEquals(twice.spread(), weighted.spread(), 1e-12);
  }

  @Test
  void keepsItsDigitsFarFromZero() {
    double[] far = Arrays.stream(X).map(x -> x + 1e6).toArray();
    LeastSquaresLine line = LeastSquaresLine.of(far, Y, ones(11)).orElseThrow();
    assertEquals(LeastSquaresLine.of(X, Y, ones(11)).orElseThrow().slope(), line.slope(), 1e-12);
  }

  @Test
  void isNothingWhereAllStandAtOnePlace() {
    assertEquals(
        Optional.empty(), LeastSquaresLine.of(new double[] {2, 2, 2}, X, ones(3)).map(l -> 1));
  }

  @Test
  void testsNothingWhereAllPointsLieOnIt() {
    LeastSquaresLine line =
        LeastSquaresLine.of(new double[] {0, 1, 2}, new double[] {0, 0, 0}, ones(3)).orElseThrow();
    assertEquals(Optional.empty(), line.testingSlope(""));
  }
}
