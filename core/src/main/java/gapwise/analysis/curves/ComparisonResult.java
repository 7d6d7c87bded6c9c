package gapwise.analysis.curves;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Two survival curves compared. Part of a {@link Result}.
 *
 * @param strata studies within which the groups were compared, where the rows tell studies apart
 * @param logHazardRatio of the group over the other, Cox's model with Efron's ties
 * @param shown the hazard ratio
 * @param restrictedMeanDifference the group's less the other's, up to the plan's horizon
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ComparisonResult(
    String group,
    String against,
    OptionalInt strata,
    OptionalDouble logHazardRatio,
    OptionalDouble standardError,
    OptionalDouble lower,
    OptionalDouble upper,
    Optional<Result.Estimate> shown,
    Optional<LogRank> logRank,
    Optional<Difference> restrictedMeanDifference) {

  /** The log-rank test without continuity correction. */
  public record LogRank(double chiSquared, int degreesOfFreedom, double pValue) {}

  /** A difference of restricted means with its limits. */
  public record Difference(double estimate, double standardError, double lower, double upper) {}
}
