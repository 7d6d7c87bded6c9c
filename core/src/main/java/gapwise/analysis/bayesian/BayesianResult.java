package gapwise.analysis.bayesian;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the studies leave of the priors, as part of a {@link Result}; on the analysis scale.
 *
 * @param mean of all true effects
 * @param tau standard deviation between studies; empty if it is the prior
 * @param predictive true effect of a further study; empty with tau
 * @param average the mean over studies of shares or rates with an exact likelihood, of means or
 *     rates on the log scale, as people read it
 * @param studies true effects given all data, one entry a pooled study; with a normal likelihood
 * @param probabilities what the plan asks for
 * @param priorSensitivity the mean under other priors of tau
 * @param priorScale scale of the half-normal prior of tau in the unit of the data, where the plan
 *     gives it in standard deviations of patients
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record BayesianResult(
    Marginal mean,
    Optional<Marginal> tau,
    Optional<Marginal> predictive,
    Optional<Shown> average,
    Optional<List<Study>> studies,
    Optional<List<Probability>> probabilities,
    Optional<List<Sensitivity>> priorSensitivity,
    OptionalDouble priorScale) {
  /** The posterior of one quantity; moments that are infinite are left out. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Marginal(
      OptionalDouble mean,
      double median,
      OptionalDouble sd,
      double lower,
      double upper,
      double shortestLower,
      double shortestUpper,
      OptionalDouble probabilityBelowZero,
      Optional<Shown> shown) {}

  /** Median and equal-tailed limits as people read them. */
  public record Shown(double median, double lower, double upper) {}

  /** The true effect of one study. */
  public record Study(String study, double mean, double sd) {}

  /**
   * The probability that a true value lies above or below one that people read.
   *
   * @param mean of the mean (where it is carried back: of the median of true values)
   * @param predictive of the true value of a further study
   * @param average of the mean over studies of shares, rates or means, where that is told
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Probability(
      OptionalDouble above,
      OptionalDouble below,
      double mean,
      OptionalDouble predictive,
      OptionalDouble average) {}

  /**
   * The mean under another prior of tau.
   *
   * @param tau that prior, as the plan says it
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Sensitivity(
      JsonNode tau,
      OptionalDouble median,
      OptionalDouble lower,
      OptionalDouble upper,
      Optional<Shown> shown,
      Optional<Shown> average) {}
}
