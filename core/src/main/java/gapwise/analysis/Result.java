package gapwise.analysis;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.synthesis.agreement.LimitsOfAgreement;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a plan gave, field by field as docs/plan.md tells it. What has no value is empty and is left
 * out of the JSON. Numbers are on the analysis scale; {@code shown} holds what people read.
 *
 * @param plan with every default filled in
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record Result(
    ObjectNode plan,
    Data data,
    Optional<List<Study>> studies,
    Optional<Summary> summary,
    Optional<Heterogeneity> heterogeneity,
    Optional<Fit> fit,
    Optional<List<Subgroup>> subgroups,
    Optional<BetweenSubgroups> betweenSubgroups,
    Optional<Influence> influence,
    Optional<List<Cumulative>> cumulative,
    Optional<List<Intervals>> intervals,
    Optional<Intervals> pooled,
    Optional<List<Conversion>> conversions,
    Optional<Agreement> agreement,
    List<Warning> warnings) {
  public Result {
    plan = plan.deepCopy();
    warnings = List.copyOf(warnings);
  }

  @Override
  public ObjectNode plan() {
    return plan.deepCopy();
  }

  /** The result of a synthesis. */
  static Result ofSynthesis(
      ObjectNode plan,
      Data data,
      List<Study> studies,
      Optional<Summary> summary,
      Heterogeneity heterogeneity,
      Optional<Fit> fit,
      Optional<Grouped> grouped,
      Optional<Influence> influence,
      Optional<List<Cumulative>> cumulative,
      List<Warning> warnings) {
    return new Result(
        plan,
        data,
        Optional.of(List.copyOf(studies)),
        summary,
        Optional.of(heterogeneity),
        fit,
        grouped.map(Grouped::subgroups),
        grouped.map(Grouped::between),
        influence,
        cumulative.map(List::copyOf),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        warnings);
  }

  /** The result of the task {@code interval}. */
  static Result ofIntervals(
      ObjectNode plan,
      Data data,
      List<Intervals> intervals,
      Optional<Intervals> pooled,
      List<Warning> warnings) {
    return new Result(
        plan,
        data,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(List.copyOf(intervals)),
        pooled,
        Optional.empty(),
        Optional.empty(),
        warnings);
  }

  /** The result of the task {@code convert}. */
  static Result ofConversions(
      ObjectNode plan, Data data, List<Conversion> conversions, List<Warning> warnings) {
    return new Result(
        plan,
        data,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(List.copyOf(conversions)),
        Optional.empty(),
        warnings);
  }

  /** The result of the task {@code agreement}. */
  static Result ofAgreement(
      ObjectNode plan, Data data, Agreement agreement, List<Warning> warnings) {
    return new Result(
        plan,
        data,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(agreement),
        warnings);
  }

  /** Subgroups with the comparison between them. */
  record Grouped(List<Subgroup> subgroups, BetweenSubgroups between) {}

  /**
   * What went in.
   *
   * @param studies rows of different studies
   * @param arms groups of patients in all rows
   * @param sha256 of the data
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Data(
      int studies, int arms, OptionalDouble participants, OptionalDouble events, String sha256) {}

  /** One data row; without weight if it was left out. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Study(
      String label,
      OptionalDouble effect,
      OptionalDouble variance,
      OptionalDouble standardError,
      OptionalDouble lower,
      OptionalDouble upper,
      OptionalDouble weightPercent,
      Optional<Estimate> shown,
      OptionalDouble uncorrected,
      OptionalDouble smallSampleFactor) {}

  /** A value with limits, as people read it. */
  public record Estimate(double estimate, double lower, double upper) {}

  /** A pooled value. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Summary(
      double estimate,
      double standardError,
      double lower,
      double upper,
      OptionalDouble statistic,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper,
      Optional<Association> associationTest,
      Shown shown) {}

  /** A test of association, for the Mantel-Haenszel odds ratio. */
  public record Association(double chiSquared, int degreesOfFreedom, double pValue) {}

  /** A pooled value as people read it; {@code n} and {@code also} for the double arcsine. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Shown(
      double estimate,
      double lower,
      double upper,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper,
      OptionalDouble n,
      Optional<List<WithN>> also) {}

  /** A pooled value carried back with another number of patients. */
  public record WithN(double n, double estimate, double lower, double upper) {}

  /** How far results differ beyond chance. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Heterogeneity(
      OptionalDouble q,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue,
      OptionalDouble tauSquared,
      OptionalDouble tau,
      OptionalDouble tauSquaredLower,
      OptionalDouble tauSquaredUpper,
      OptionalDouble iSquaredPercent,
      OptionalDouble iSquaredPercentFromQ,
      OptionalDouble hSquared,
      OptionalDouble hSquaredFromQ) {}

  /** The top of a likelihood. */
  public record Fit(double logLikelihood, boolean restricted, boolean converged) {}

  /** One group of studies. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Subgroup(
      String level, int studies, Optional<Summary> summary, Heterogeneity heterogeneity) {}

  /** Whether groups differ beyond chance. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record BetweenSubgroups(
      OptionalDouble q,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue,
      OptionalDouble tauSquared) {}

  /** What single studies do; one entry a pooled study. */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Influence(
      List<Omitted> leaveOneOut, List<Diagnostic> diagnostics, List<Contribution> contributions) {}

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

  /** Intervals of one row, or of all counts together. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Intervals(
      Optional<String> label,
      double events,
      OptionalDouble total,
      OptionalDouble personTime,
      double estimate,
      List<Limits> methods) {}

  /** The limits of one method. */
  public record Limits(String method, double lower, double upper) {}

  /** Means and standard deviations of one row. */
  public record Conversion(String label, String reported, List<Converted> values) {}

  /** What one method makes of a row. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Converted(String method, OptionalDouble mean, OptionalDouble sd) {}

  /** How far raters agree. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Agreement(
      OptionalDouble percentAgreement,
      Optional<List<Kappa>> kappa,
      Optional<MeanSquares> meanSquares,
      Optional<List<Correlation>> intraclassCorrelation,
      Optional<LimitsOfAgreement> limitsOfAgreement) {}

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

  /**
   * What a reader must know.
   *
   * @param code kebab-case word that stays stable
   * @param study whose row it is about, if one
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Warning(String code, String message, Optional<String> study) {
    /** A warning about the whole. */
    public static Warning of(String code, String message) {
      return new Warning(code, message, Optional.empty());
    }

    /** A warning about one study. */
    public static Warning of(String code, String message, String study) {
      return new Warning(code, message, Optional.of(study));
    }
  }
}
