package gapwise.synthesis.regression;

import gapwise.numeric.SymmetricMatrix;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether several coefficients are all 0, by their sandwich: with Q = b'V^-1 b for q of them and
 * eta its degrees of freedom, (eta - q + 1)/(eta q) Q against F on q and eta - q + 1 (Tipton and
 * Pustejovsky, J Educ Behav Stat 2015;40:604, approximate Hotelling's T squared).
 *
 * @param statistic F
 * @param numerator q
 * @param denominator eta - q + 1, above 0
 * @param pValue upper tail
 */
public record RobustTest(double statistic, int numerator, double denominator, double pValue) {

  /**
   * Of some coefficients.
   *
   * @param which their places
   * @param variance sandwich of all coefficients
   * @return empty where there are too few clusters for so many coefficients
   */
  static Optional<RobustTest> of(
      ClusteredFit fit, List<Integer> which, RealMatrix variance, SandwichDegrees degrees) {
    int q = which.size();
    int[] places = which.stream().mapToInt(Integer::intValue).toArray();
    RealMatrix model = fit.inverseInformation().getSubMatrix(places, places);
    RealMatrix apart = SymmetricMatrix.of(model).inverseRoot();
    RealMatrix multiples = new Array2DRowRealMatrix(fit.terms(), q);
    for (int i = 0; i < q; i++) {
      multiples.setRow(places[i], apart.getRow(i));
    }
    OptionalDouble eta = degrees.ofSeveral(multiples);
    SingularValueDecomposition solver =
        new SingularValueDecomposition(
            multiples.transpose().multiply(variance).multiply(multiples));
    double[] estimates = new double[q];
    for (int i = 0; i < q; i++) {
      estimates[i] = fit.estimates().get(places[i]);
    }
    double[] scaled = apart.operate(estimates);
    double left = eta.orElse(0) - q + 1;
    if (!(left > 0) || solver.getRank() < q) {
      return Optional.empty();
    }
    double[] solved = solver.getSolver().getInverse().operate(scaled);
    double square = 0;
    for (int i = 0; i < q; i++) {
      square += scaled[i] * solved[i];
    }
    double statistic = left / (eta.getAsDouble() * q) * square;
    return statistic >= 0 && statistic < Double.MAX_VALUE
        ? Optional.of(
            new RobustTest(
                statistic, q, left, FDistribution.of(q, left).survivalProbability(statistic)))
        : Optional.empty();
  }
}
