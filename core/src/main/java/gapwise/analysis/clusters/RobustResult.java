package gapwise.analysis.clusters;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.synthesis.regression.RobustCoefficient;
import gapwise.synthesis.regression.RobustTest;
import gapwise.synthesis.regression.RobustVariance;
import java.util.List;
import java.util.Optional;

/**
 * Coefficients with standard errors that allow for clusters. Part of a {@link Result}.
 *
 * @param coefficients those that have one
 * @param moderatorTest of all terms but the intercept
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record RobustResult(
    int clusters, List<Coefficient> coefficients, Optional<Test> moderatorTest) {
  /** One coefficient; a mean is the term {@code intercept}. */
  public record Coefficient(
      String term,
      double estimate,
      double standardError,
      double lower,
      double upper,
      double statistic,
      double degreesOfFreedom,
      double pValue) {}

  /** F with its two degrees of freedom. */
  public record Test(double statistic, List<Double> degreesOfFreedom, double pValue) {}

  static RobustResult of(RobustVariance robust) {
    return new RobustResult(
        robust.clusters(),
        robust.coefficients().stream().map(RobustResult::of).toList(),
        robust.moderatorTest().map(RobustResult::of));
  }

  private static Coefficient of(RobustCoefficient one) {
    return new Coefficient(
        one.term(),
        one.estimate(),
        one.standardError(),
        one.interval().lower(),
        one.interval().upper(),
        one.statistic(),
        one.degreesOfFreedom(),
        one.pValue());
  }

  private static Test of(RobustTest test) {
    return new Test(
        test.statistic(), List.of((double) test.numerator(), test.denominator()), test.pValue());
  }
}
