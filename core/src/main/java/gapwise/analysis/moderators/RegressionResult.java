package gapwise.analysis.moderators;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.PlaceResult;
import gapwise.analysis.result.Result;
import gapwise.synthesis.likelihood.LikelihoodRatioTest;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.regression.WaldTest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What moderators explain of the differences between studies. Part of a {@link Result}.
 *
 * @param residualQ empty for an exact likelihood, which has none
 * @param rSquaredPercent empty where there is nothing to explain, and for an exact likelihood
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record RegressionResult(
    List<Coefficient> coefficients,
    Optional<ResidualQ> residualQ,
    Optional<Test> moderatorTest,
    OptionalDouble rSquaredPercent,
    Optional<List<Nonlinearity>> nonlinearity,
    Optional<Permutation> permutationTest,
    Optional<List<Prediction>> predictions,
    Optional<List<Curve>> curves,
    Optional<List<Omitted>> leaveOneOut) {

  /** One coefficient. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Coefficient(
      String term,
      double estimate,
      double standardError,
      OptionalDouble statistic,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue,
      double lower,
      double upper) {
    public static Coefficient of(String term, PooledMean value) {
      return new Coefficient(
          term,
          value.estimate(),
          value.standardError(),
          value.statistic(),
          value.degreesOfFreedom(),
          value.pValue(),
          value.interval().lower(),
          value.interval().upper());
    }
  }

  /** Q of what the moderators leave. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record ResidualQ(OptionalDouble q, OptionalInt degreesOfFreedom, OptionalDouble pValue) {}

  /** A test of some coefficients together; two degrees of freedom for F. */
  public record Test(double statistic, List<Integer> degreesOfFreedom, double pValue) {
    public static Test of(WaldTest test) {
      return new Test(test.statistic(), test.degreesOfFreedom(), test.pValue());
    }

    static Test of(LikelihoodRatioTest test) {
      return new Test(test.statistic(), test.degreesOfFreedom(), test.pValue());
    }
  }

  /** Whether a curve is more than a straight line. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Nonlinearity(String column, List<Double> knots, Optional<Test> test) {}

  /** P values by exchanging moderators between studies. */
  public record Permutation(
      boolean exact,
      long arrangements,
      List<PermutedTerm> coefficients,
      PermutedModerators moderatorTest) {}

  /** The p value of one term. */
  public record PermutedTerm(String term, double pValue) {}

  /** The p value of all moderators together. */
  public record PermutedModerators(double pValue) {}

  /** The mean expected at some values of the moderators. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Prediction(
      Map<String, JsonNode> at,
      double estimate,
      double standardError,
      double lower,
      double upper,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper,
      boolean outsideData,
      Shown shown,
      Optional<List<PlaceResult>> places) {}

  /**
   * A prediction as people read it.
   *
   * @param average mean of the distribution of true values there, where {@code estimate} is its
   *     median; limits as in {@link Result.Shown}
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Shown(
      double estimate,
      double lower,
      double upper,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper,
      OptionalDouble average,
      OptionalDouble averageLower,
      OptionalDouble averageUpper) {}

  /** Predictions along one moderator. */
  public record Curve(String column, List<Prediction> points) {}

  /** The regression without one study. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Omitted(
      String omitted, Optional<List<Coefficient>> coefficients, OptionalDouble tauSquared) {}
}
