package gapwise.analysis.trial;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * What a trial of two equal arms needs. Part of a {@link Result}.
 *
 * @param patientsPerArm what to recruit: for proportions by the exact test where a trial is small,
 *     else by the formula, rounded up
 * @param basis how it was found: {@code exact-test}, {@code formula}
 * @param patients of both arms
 * @param exactPatientsPerArm of the formula, before rounding up
 * @param patientsPerArmWithContinuityCorrection for proportions, if an exact test will read them
 * @param powerOfExactTest the power of {@code patientsPerArm} by the exact test, if it was counted
 * @param difference intervention less comparator, of logarithms on the log scale
 * @param standardDeviation within arms, for means
 * @param groupsWithSpread how many groups gave it; left out if the plan itself did
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record TrialResult(
    long patientsPerArm,
    long patients,
    String basis,
    double exactPatientsPerArm,
    OptionalLong patientsPerArmWithContinuityCorrection,
    OptionalDouble powerOfExactTest,
    double difference,
    OptionalDouble standardDeviation,
    OptionalInt groupsWithSpread)
    implements TaskResult {
  @Override
  public Optional<String> field() {
    return Optional.of("trial");
  }
}
