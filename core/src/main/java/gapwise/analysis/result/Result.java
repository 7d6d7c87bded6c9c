package gapwise.analysis.result;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;

/**
 * What a plan gave, as docs/plan.md tells it: the plan, what went in, the part its task makes, and
 * what a reader must know. What has no value is empty and is left out of the JSON. Numbers are on
 * the analysis scale; {@code shown} holds what people read.
 *
 * @param plan with every default filled in
 * @param part what the task of the plan makes
 */
public record Result(ObjectNode plan, Data data, TaskResult part, List<Warning> warnings) {
  public Result {
    plan = plan.deepCopy();
    warnings = List.copyOf(warnings);
  }

  @Override
  public ObjectNode plan() {
    return plan.deepCopy();
  }

  /** The part, if it is of this kind: another task makes another. */
  public <P extends TaskResult> Optional<P> part(Class<P> kind) {
    return kind.isInstance(part) ? Optional.of(kind.cast(part)) : Optional.empty();
  }

  /**
   * What went in.
   *
   * @param studies rows of different studies
   * @param arms groups of patients in all rows
   * @param sha256 of the data
   * @param reported what rows of the evidence base report as means and medians, by method and over
   *     all; empty for other data
   * @param extraction how the studies of the evidence base were read; empty for other data
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Data(
      int studies,
      int arms,
      OptionalDouble participants,
      OptionalDouble events,
      String sha256,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<ReportedCentres> reported,
      Optional<ReadCounts> extraction) {
    public Data {
      reported = List.copyOf(reported);
    }

    /** Data of which no means and medians are told apart from the result. */
    public Data(
        int studies, int arms, OptionalDouble participants, OptionalDouble events, String sha256) {
      this(studies, arms, participants, events, sha256, List.of(), Optional.empty());
    }
  }

  /**
   * One data row; without weight if it was left out.
   *
   * @param label for people, unique among rows of the evidence base
   * @param studyId of the study in the evidence base, if the row comes from there
   * @param armId of its arm
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Study(
      String label,
      Optional<String> studyId,
      Optional<String> armId,
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

  /**
   * A pooled value as people read it.
   *
   * @param n for the double arcsine, as {@code also}
   * @param average mean of the distribution of the studies' true values, where {@code estimate} is
   *     its median: shares and rates by their exact likelihood, means on the log scale
   * @param averageLower the lower limit of {@code summary} carried to that mean, at the same spread
   * @param averageUpper the upper limit likewise
   * @param exactLikelihood by the binomial-normal likelihood, beside a double arcsine
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Shown(
      double estimate,
      double lower,
      double upper,
      OptionalDouble predictionLower,
      OptionalDouble predictionUpper,
      OptionalDouble n,
      Optional<List<WithN>> also,
      OptionalDouble average,
      OptionalDouble averageLower,
      OptionalDouble averageUpper,
      Optional<Estimate> exactLikelihood) {}

  /** A pooled value carried back with another number of patients. */
  public record WithN(double n, double estimate, double lower, double upper) {}

  /**
   * How far results differ beyond chance.
   *
   * @param intraclassCorrelation in the place of tau squared where true shares have a beta
   *     distribution
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Heterogeneity(
      OptionalDouble q,
      OptionalInt degreesOfFreedom,
      OptionalDouble pValue,
      OptionalDouble tauSquared,
      OptionalDouble tau,
      OptionalDouble tauSquaredLower,
      OptionalDouble tauSquaredUpper,
      @JsonUnwrapped ISquared iSquared,
      OptionalDouble hSquared,
      OptionalDouble hSquaredFromQ,
      OptionalDouble intraclassCorrelation) {
    /** Where the share has no limits. */
    public Heterogeneity(
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
        OptionalDouble hSquaredFromQ) {
      this(
          q,
          degreesOfFreedom,
          pValue,
          tauSquared,
          tau,
          tauSquaredLower,
          tauSquaredUpper,
          new ISquared(
              iSquaredPercent,
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              iSquaredPercentFromQ),
          hSquared,
          hSquaredFromQ,
          OptionalDouble.empty());
    }

    /** The share of the variance that is between studies, from tau squared. */
    @JsonIgnore
    public OptionalDouble iSquaredPercent() {
      return iSquared.iSquaredPercent();
    }

    /** The same share from Q. */
    @JsonIgnore
    public OptionalDouble iSquaredPercentFromQ() {
      return iSquared.iSquaredPercentFromQ();
    }
  }

  /** The top of a likelihood. */
  public record Fit(double logLikelihood, boolean restricted, boolean converged) {}

  /**
   * What a reader must know.
   *
   * @param code kebab-case word that stays stable
   * @param study label of the row it is about, if one
   * @param studyId of the study in the evidence base, if that row comes from there
   * @param armId of its arm
   * @param group the group of studies it is about, if one, whose level its message names
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Warning(
      String code,
      String message,
      Optional<String> study,
      Optional<String> studyId,
      Optional<String> armId,
      @JsonIgnore Optional<OfGroup> group) {
    /**
     * A group of studies and what is said of it.
     *
     * @param level as the column names it
     * @param words the message without the level
     */
    public record OfGroup(String level, String words) {}

    /** A warning that is about no group. */
    public Warning(
        String code,
        String message,
        Optional<String> study,
        Optional<String> studyId,
        Optional<String> armId) {
      this(code, message, study, studyId, armId, Optional.empty());
    }

    /** The same about a row that comes from the evidence base. */
    public Warning about(Optional<String> studyId, Optional<String> armId) {
      return new Warning(code, message, study, studyId, armId);
    }

    /**
     * The message as people read it among other sentences.
     *
     * @param named the name of a group by its level
     */
    public String sentence(UnaryOperator<String> named) {
      return group
          .map(
              one ->
                  say(
                      "analysis.of-group-named",
                      Map.of("group", named.apply(one.level()), "what", one.words())))
          .orElseGet(this::sentence);
    }

    /** The message as people read it among other sentences, groups by their levels. */
    public String sentence() {
      String end = message.endsWith(".") ? "" : ".";
      return Character.toUpperCase(message.charAt(0)) + message.substring(1) + end;
    }

    /** A warning about the whole. */
    public static Warning of(String code, String message) {
      return new Warning(code, message, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** What a room of the number wing found, as a warning about one group of studies. */
    public static Warning ofGroup(String level, Problem problem) {
      return new Warning(
          problem.code(),
          say("analysis.of-group", Map.of("level", level, "what", problem.message())),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(new OfGroup(level, problem.message())));
    }

    /** What a room of the number wing found, as a warning about the whole. */
    public static Warning of(Problem problem) {
      return of(problem.code(), problem.message());
    }

    /** A warning about one study. */
    public static Warning of(String code, String message, String study) {
      return new Warning(code, message, Optional.of(study), Optional.empty(), Optional.empty());
    }
  }
}
