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

  /**
   * A lower limit of tau above this, on the scale of logits or logs, is said to be more than
   * chance: odds, or rates, of centres that differ by a tenth (our choice).
   */
  private static final double LEAST_SPREAD_OF_COUNTS = 0.1;

  /**
   * An interval over so much of all that a share can be says next to nothing (our choice): two
   * series of two patients each, one with the event, leave 70 of 100.
   */
  private static final double WIDE_SHARE = 2.0 / 3;

  /** As does one whose upper limit is so many times its lower (our choice). */
  private static final double WIDE_RATIO = 25;

  private PooledValue() {}

  /**
   * Whether an average has so wide an interval that no average is given: the counts and the series
   * stand instead.
   *
   * @param shares whether it is of shares; else of what has a unit
   */
  static boolean saysNextToNothing(Estimate average, boolean shares) {
    double lower = average.limits().lower();
    double upper = average.limits().upper();
    return shares ? upper - lower >= WIDE_SHARE : lower > 0 && upper / lower >= WIDE_RATIO;
  }

  /**
   * Whether the posterior of tau, which never is 0, says that centres differ.
   *
   * @param heterogeneity of counts pooled by a posterior
   */
  public static boolean differ(Result.Heterogeneity heterogeneity) {
    return Math.sqrt(heterogeneity.tauSquaredLower().orElse(0)) > LEAST_SPREAD_OF_COUNTS;
  }

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

  /**
   * The same by a posterior, whose prior of how far centres differ is enough from two groups on
   * (docs/methods/coverage.md).
   */
  public static Optional<Limits> newCentreByPosterior(Result.Shown shown, int groups) {
    return newCentre(shown.predictionLower(), shown.predictionUpper(), groups, 2);
  }

  private static Optional<Limits> newCentre(
      OptionalDouble lower, OptionalDouble upper, int groups) {
    return newCentre(lower, upper, groups, FEWEST_FOR_NEW_CENTRE);
  }

  private static Optional<Limits> newCentre(
      OptionalDouble lower, OptionalDouble upper, int groups, int fewest) {
    return groups >= fewest
            && lower.isPresent()
            && upper.isPresent()
            && Double.isFinite(lower.getAsDouble())
            && Double.isFinite(upper.getAsDouble())
        ? Optional.of(new Limits(lower.getAsDouble(), upper.getAsDouble()))
        : Optional.empty();
  }
}
