package gapwise.analysis.pooling;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What single studies do to a pooled value, as part of a {@link Result}; one entry a pooled study.
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record InfluenceResult(
    List<Omitted> leaveOneOut, List<OfOneStudy> ofEachStudy, List<Contribution> contributions) {

  /** Pooled without one study. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Omitted(
      String omitted,
      OptionalDouble estimate,
      OptionalDouble standardError,
      OptionalDouble lower,
      OptionalDouble upper,
      OptionalDouble tauSquared,
      OptionalDouble q) {}

  /**
   * What changes when one study is left out.
   *
   * @param leverage the study's share of the weights
   * @param studentisedResidual its distance from what the others give, in standard errors
   * @param standardisedChange of the pooled value, in standard errors times the root of leverage
   * @param cooksDistance squared change of the pooled value over its variance
   * @param covarianceRatio variance of the pooled value without the study over that with it
   */
  public record OfOneStudy(
      String study,
      double leverage,
      double studentisedResidual,
      double standardisedChange,
      double cooksDistance,
      double covarianceRatio) {}

  /** What one study adds to Q and to the estimate, by common effect. */
  public record Contribution(String study, double toQ, double toEstimate) {}

  /** Pooled with all studies up to one. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Cumulative(
      String added,
      OptionalDouble estimate,
      OptionalDouble standardError,
      OptionalDouble lower,
      OptionalDouble upper,
      OptionalDouble tauSquared) {}
}
