package gapwise.analysis.curves;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One survival curve pooled from several. Part of a {@link Result}.
 *
 * @param group where the rows tell groups within studies apart
 * @param studies curves that went in
 * @param times the curve, empty if no two studies can be pooled
 * @param median where the curve crosses one half
 * @param restrictedMean up to the plan's horizon
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record PooledCurveResult(
    Optional<String> group,
    int studies,
    int patients,
    List<At> times,
    OptionalDouble median,
    OptionalDouble medianLower,
    OptionalDouble medianUpper,
    Optional<Mean> restrictedMean) {
  public PooledCurveResult {
    times = List.copyOf(times);
  }

  /** The pooled curve at one time, with the studies and patients that speak of it. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record At(
      double time,
      int studies,
      int atRisk,
      double survival,
      OptionalDouble standardErrorOfLog,
      OptionalDouble lower,
      OptionalDouble upper,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper) {}

  /** Restricted means of the studies that were followed to the horizon, pooled. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Mean(
      double horizon,
      int studies,
      Optional<Result.Summary> summary,
      Result.Heterogeneity heterogeneity) {}
}
