package gapwise.analysis.curves;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.synthesis.survival.KaplanMeier;
import gapwise.synthesis.survival.PatientTime;
import gapwise.synthesis.survival.PatientTimes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One survival curve with its patients. Part of a {@link Result}.
 *
 * @param study where the rows tell studies apart
 * @param median first time with survival at or below one half; its limits by log-log limits of the
 *     curve
 * @param restrictedMean up to the plan's horizon
 * @param largestDifference between the reconstructed curve and a point that was read
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record CurveResult(
    Optional<String> group,
    Optional<String> study,
    int patients,
    int events,
    OptionalDouble median,
    OptionalDouble medianLower,
    OptionalDouble medianUpper,
    OptionalDouble restrictedMean,
    OptionalDouble restrictedMeanStandardError,
    List<At> survivalAt,
    OptionalDouble largestDifference,
    List<Individual> individuals) {
  public CurveResult {
    survivalAt = List.copyOf(survivalAt);
    individuals = List.copyOf(individuals);
  }

  /** A time at which the curve falls, and the share without the event just after it, 0 to 1. */
  public record Fall(double time, double survival) {}

  /** The curve in steps, by Kaplan and Meier from the individuals. */
  public List<Fall> falls() {
    return curve().steps().stream().map(step -> new Fall(step.time(), step.survival())).toList();
  }

  /** The same with its limits, as {@code survivalAt} has them at the times of the plan. */
  public List<At> fallsWithLimits(double level) {
    KaplanMeier curve = curve();
    return curve.steps().stream().map(step -> at(curve, step.time(), level)).toList();
  }

  private KaplanMeier curve() {
    return KaplanMeier.of(
        PatientTimes.of(
            individuals.stream().map(one -> new PatientTime(one.time(), one.event())).toList()));
  }

  /** What a curve says of one time. */
  static At at(KaplanMeier curve, double time, double level) {
    Optional<Interval> limits = curve.limitsAt(time, level);
    return new At(
        time,
        curve.survivalAt(time),
        curve.standardErrorAt(time),
        limits.map(l -> OptionalDouble.of(l.lower())).orElse(OptionalDouble.empty()),
        limits.map(l -> OptionalDouble.of(l.upper())).orElse(OptionalDouble.empty()));
  }

  /** Survival at one time, with Greenwood's standard error and log-log limits. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record At(
      double time,
      OptionalDouble survival,
      OptionalDouble standardError,
      OptionalDouble lower,
      OptionalDouble upper) {}

  /** One patient: followed so long, with or without the event then. */
  public record Individual(double time, boolean event) {}
}
