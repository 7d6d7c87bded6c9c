package gapwise.analysis.subgroups;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.pooling.PlaceResult;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Groups of studies and whether they differ, as part of a result.
 *
 * @param subgroups in the order in which the rows name them
 */
public record SubgroupsResult(List<Subgroup> subgroups, Between betweenSubgroups) {
  public SubgroupsResult {
    subgroups = List.copyOf(subgroups);
  }

  /**
   * One group of studies.
   *
   * @param level the text that the rows have in common
   * @param onlyLimit as in {@link gapwise.analysis.pooling.PooledResult}
   * @param places asked for in the plan
   * @param bayesian the posterior of the group by itself, if the model gives one
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Subgroup(
      String level,
      int studies,
      Optional<Result.Summary> summary,
      OptionalDouble onlyLimit,
      Result.Heterogeneity heterogeneity,
      Optional<List<PlaceResult>> places,
      Optional<BayesianResult> bayesian) {}

  /**
   * Whether groups differ beyond chance.
   *
   * @param fStatistic with {@code residualDegreesOfFreedom} where the test is by F; else it is q
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Between(
      OptionalDouble q,
      OptionalInt degreesOfFreedom,
      OptionalDouble fStatistic,
      OptionalDouble residualDegreesOfFreedom,
      OptionalDouble pValue,
      OptionalDouble tauSquared) {}
}
