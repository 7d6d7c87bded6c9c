package gapwise.effect;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a plan says about measures; each measure takes what concerns it.
 *
 * @param scale one of {@link Measures#scales}
 * @param emptyCells what is added to zero cells
 * @param backTransformN patients for the way back from the double arcsine; empty for the harmonic
 *     mean
 * @param backTransformAlsoWith further numbers of patients to show the result with
 * @param exactFactor whether the small-sample factor is exact
 * @param factorSquaredVariance whether the variance of a standardised difference is multiplied by
 *     the squared factor
 * @param reportedAsRatio whether reported effects are ratios
 * @param limitsLevel of reported limits, above 0 and below 1, where a row names no other; not that
 *     of the answer
 * @param correlation of values before and after in the same patients, where a row names none; empty
 *     if the plan states none
 * @param pooling how studies are put together: by the variance of their effects, or from counts
 */
public record MeasureOptions(
    String scale,
    EmptyCells emptyCells,
    OptionalDouble backTransformN,
    List<Double> backTransformAlsoWith,
    boolean exactFactor,
    boolean factorSquaredVariance,
    boolean reportedAsRatio,
    double limitsLevel,
    OptionalDouble correlation,
    Pooling pooling) {

  /** How studies are put together. */
  public enum Pooling {
    /** By the variance of their effects. */
    INVERSE_VARIANCE,
    /** From counts, to which nothing is added. */
    COUNTS,
    /** By Peto's one-step odds ratio. */
    PETO
  }

  public MeasureOptions {
    backTransformAlsoWith = List.copyOf(backTransformAlsoWith);
  }
}
