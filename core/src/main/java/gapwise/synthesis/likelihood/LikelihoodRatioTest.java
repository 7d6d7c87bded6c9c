package gapwise.synthesis.likelihood;

import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Whether some coefficients are all 0, by how far the likelihood falls without them: twice the
 * difference of the tops, chi-squared on as many degrees of freedom (Wilks, Ann Math Stat
 * 1938;9:60); or its share for each of them against F with those of the residuals, which for one
 * coefficient is the square of the signed root against Student's t.
 *
 * @param statistic chi-squared, or its share
 * @param degreesOfFreedom one number, or two for F
 * @param pValue upper tail
 */
public record LikelihoodRatioTest(double statistic, List<Integer> degreesOfFreedom, double pValue) {
  public LikelihoodRatioTest {
    degreesOfFreedom = List.copyOf(degreesOfFreedom);
  }

  /**
   * Tests.
   *
   * @param fall of the log likelihood, at least 0
   * @param terms left out, at least one
   * @param residual k - p, for F; 0 for chi-squared
   */
  static LikelihoodRatioTest of(double fall, int terms, int residual) {
    double twice = Math.max(0, 2 * fall);
    return residual == 0
        ? new LikelihoodRatioTest(
            twice, List.of(terms), ChiSquaredDistribution.of(terms).survivalProbability(twice))
        : new LikelihoodRatioTest(
            twice / terms,
            List.of(terms, residual),
            FDistribution.of(terms, residual).survivalProbability(twice / terms));
  }
}
