package gapwise.analysis;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What single studies do to a pooled value, as part of a {@link Result}; one entry a pooled study.
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record InfluenceResult(
    List<Omitted> leaveOneOut, List<Diagnostic> diagnostics, List<Contribution> contributions) {

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

  /** Deletion diagnostics of one study. */
  public record Diagnostic(
      String study,
      double studentisedResidual,
      double dffits,
      double cooksDistance,
      double covarianceRatio,
      double hat) {}

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
