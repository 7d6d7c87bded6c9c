package gapwise.analysis.pooling;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The rows with their weights and what they come to together, as part of a result.
 *
 * @param studies one entry a data row
 * @param summary empty with moderators, and where nothing can be pooled
 * @param onlyLimit where a proportion or rate goes when its likelihood has no highest point and
 *     there is no summary; told in the JSON as {@code summary.shown.limit}
 * @param heterogeneity what is left of it after moderators, if there are some
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record PooledResult(
    List<Result.Study> studies,
    Optional<Result.Summary> summary,
    OptionalDouble onlyLimit,
    Optional<Result.Heterogeneity> heterogeneity,
    Optional<Result.Fit> fit) {
  public PooledResult {
    studies = List.copyOf(studies);
  }
}
