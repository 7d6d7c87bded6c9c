package gapwise.analysis.agreement;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import gapwise.synthesis.agreement.LimitsOfAgreement;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** How far raters agree, as part of a {@link Result}. */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record AgreementResult(
    OptionalDouble percentAgreement,
    Optional<List<Kappa>> kappa,
    Optional<MeanSquares> meanSquares,
    Optional<List<Correlation>> intraclassCorrelation,
    Optional<LimitsOfAgreement> limitsOfAgreement)
    implements TaskResult {
  @Override
  public Optional<String> field() {
    return Optional.of("agreement");
  }

  /** Kappa with one set of weights. */
  public record Kappa(
      String weights,
      double estimate,
      double standardError,
      double standardErrorUnderZero,
      double lower,
      double upper) {}

  /** Mean squares of subjects by raters. */
  public record MeanSquares(
      double betweenSubjects, double withinSubjects, double betweenRaters, double residual) {}

  /** One form of the intraclass correlation. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Correlation(
      String form, double estimate, Optional<Double> lower, Optional<Double> upper) {}
}
