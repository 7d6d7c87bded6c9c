package gapwise.answer;

import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.result.Result;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The numbers of a pooled value that people read, the same wherever it stands: the average over
 * centres, which is the mean of the distribution of their true values and not its middle, and where
 * a new centre may lie.
 */
public final class PooledValue {
  /** Fewer groups than this give no range for another centre (common practice, no source). */
  static final int FEWEST_FOR_NEW_CENTRE = 5;

  private PooledValue() {}

  /** The average with its limits; of a ratio, or of what does not bend, the pooled value. */
  public static Estimate average(Result.Shown shown) {
    return average(
        shown.average(),
        shown.averageLower(),
        shown.averageUpper(),
        Estimate.of(shown.estimate(), shown.lower(), shown.upper()));
  }

  /** The average where moderators have some values. */
  public static Estimate average(RegressionResult.Shown shown) {
    return average(
        shown.average(),
        shown.averageLower(),
        shown.averageUpper(),
        Estimate.of(shown.estimate(), shown.lower(), shown.upper()));
  }

  private static Estimate average(
      OptionalDouble average, OptionalDouble lower, OptionalDouble upper, Estimate otherwise) {
    return average.isPresent()
        ? Estimate.of(average.getAsDouble(), lower.orElseThrow(), upper.orElseThrow())
        : otherwise;
  }

  /**
   * Where the true value of a new centre may lie; empty where it cannot be told.
   *
   * @param groups how many were pooled
   */
  public static Optional<Limits> newCentre(Result.Shown shown, int groups) {
    return newCentre(shown.predictionLower(), shown.predictionUpper(), groups);
  }

  /** The same where moderators have some values. */
  static Optional<Limits> newCentre(RegressionResult.Shown shown, int groups) {
    return newCentre(shown.predictionLower(), shown.predictionUpper(), groups);
  }

  private static Optional<Limits> newCentre(
      OptionalDouble lower, OptionalDouble upper, int groups) {
    return groups >= FEWEST_FOR_NEW_CENTRE
            && lower.isPresent()
            && upper.isPresent()
            && Double.isFinite(lower.getAsDouble())
            && Double.isFinite(upper.getAsDouble())
        ? Optional.of(new Limits(lower.getAsDouble(), upper.getAsDouble()))
        : Optional.empty();
  }
}
