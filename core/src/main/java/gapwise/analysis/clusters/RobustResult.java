package gapwise.analysis.clusters;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.synthesis.pooling.PooledMean;
import gapwise.synthesis.regression.RobustVariance;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Coefficients with standard errors that allow for clusters. Part of a {@link Result}. */
public record RobustResult(int clusters, List<Coefficient> coefficients) {
  /** One coefficient; a mean is the term {@code intercept}. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Coefficient(
      String term,
      double estimate,
      double standardError,
      double lower,
      double upper,
      OptionalDouble statistic,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue) {}

  static RobustResult of(RobustVariance robust) {
    return new RobustResult(
        robust.clusters(),
        robust.coefficients().stream().map(one -> of(one.term(), one.value())).toList());
  }

  private static Coefficient of(String term, PooledMean value) {
    return new Coefficient(
        term,
        value.estimate(),
        value.standardError(),
        value.interval().lower(),
        value.interval().upper(),
        value.statistic(),
        value.degreesOfFreedom(),
        value.pValue());
  }
}
