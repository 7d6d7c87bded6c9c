package gapwise.synthesis.regression;

import gapwise.numeric.LeastSquares;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether some coefficients are all 0: b' V^-1 b for them, chi-squared on as many degrees of
 * freedom; with residual degrees of freedom its share for each of them, against F (Knapp and
 * Hartung, Stat Med 2003;22:2693).
 *
 * @param statistic chi-squared, or F
 * @param degreesOfFreedom one number, or two for F
 * @param pValue upper tail
 */
public record WaldTest(double statistic, List<Integer> degreesOfFreedom, double pValue) {
  public WaldTest {
    degreesOfFreedom = List.copyOf(degreesOfFreedom);
  }

  /**
   * Tests.
   *
   * @param estimates all coefficients
   * @param covariance of all coefficients
   * @param which places of the ones tested; without any there is no test
   * @param residual degrees of freedom of the variance, for F
   * @return empty if the covariance is 0 or cannot be inverted
   */
  static Optional<WaldTest> of(
      double[] estimates, double[][] covariance, List<Integer> which, OptionalInt residual) {
    int count = which.size();
    if (count == 0) {
      return Optional.empty();
    }
    double[] rows = new double[count * count];
    double[] tested = new double[count];
    double[] ones = new double[count];
    for (int a = 0; a < count; a++) {
      tested[a] = estimates[which.get(a)];
      ones[a] = 1;
      for (int b = 0; b < count; b++) {
        rows[a * count + b] = covariance[which.get(a)][which.get(b)];
      }
    }
    LeastSquares inverse = LeastSquares.of(rows, count, ones);
    if (!inverse.isFullRank()) {
      return Optional.empty();
    }
    LeastSquares.Solution solved = inverse.solve(tested);
    double square = 0;
    for (int a = 0; a < count; a++) {
      square += tested[a] * solved.coefficient(a);
    }
    if (!(square >= 0 && square < Double.MAX_VALUE)) {
      return Optional.empty();
    }
    if (residual.isEmpty()) {
      return Optional.of(
          new WaldTest(
              square,
              List.of(count),
              ChiSquaredDistribution.of(count).survivalProbability(square)));
    }
    double f = square / count;
    List<Integer> degrees = new ArrayList<>(List.of(count, residual.getAsInt()));
    return Optional.of(
        new WaldTest(
            f, degrees, FDistribution.of(count, residual.getAsInt()).survivalProbability(f)));
  }
}
