package gapwise.effect;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a plan says about measures; each measure takes what concerns it.
 *
 * @param scale one of {@link Measures#scales}
 * @param zeroCells what is added to zero cells
 * @param backTransformN patients for the way back from the double arcsine; empty for the harmonic
 *     mean
 * @param backTransformAlsoWith further numbers of patients to show the result with
 */
public record MeasureOptions(
    String scale,
    ZeroCells zeroCells,
    OptionalDouble backTransformN,
    List<Double> backTransformAlsoWith) {
  public MeasureOptions {
    backTransformAlsoWith = List.copyOf(backTransformAlsoWith);
  }
}
