package gapwise.effect;

import gapwise.problem.Problem;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The effect of one study on the analysis scale, as far as it can be had.
 *
 * @param estimate empty if the study's numbers do not determine it
 * @param variance its squared standard error; empty if not determined
 * @param leftOut why the study cannot be pooled; empty if it can
 * @param cellsAdded whether something was added to cells with 0
 * @param standardised what belongs to a standardised mean difference only
 */
public record StudyEffect(
    OptionalDouble estimate,
    OptionalDouble variance,
    Optional<Problem> leftOut,
    boolean cellsAdded,
    Optional<Standardised> standardised) {

  /**
   * Before and beside the small-sample correction.
   *
   * @param uncorrected difference over pooled standard deviation; empty if not determined
   * @param factor what it is multiplied by
   */
  public record Standardised(OptionalDouble uncorrected, double factor) {}

  /** A study whose own effect is infinite but which is pooled from its counts. */
  static final StudyEffect COUNTS_ONLY =
      new StudyEffect(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty(),
          false,
          Optional.empty());

  public StudyEffect {
    if (leftOut.isEmpty() && estimate.isPresent() != variance.isPresent()) {
      throw new IllegalArgumentException("an effect that is pooled needs estimate and variance");
    }
  }

  /** An effect that can be pooled; overflow to infinity counts as not determined. */
  public static StudyEffect of(double estimate, double variance) {
    if (!Double.isFinite(estimate) || !Double.isFinite(variance)) {
      return leftOut(
          "study-left-out",
          "the numbers are too large or too small for an effect to be worked out");
    }
    return new StudyEffect(
        OptionalDouble.of(estimate),
        OptionalDouble.of(variance),
        Optional.empty(),
        false,
        Optional.empty());
  }

  /** A study of which nothing can be worked out. */
  public static StudyEffect leftOut(String code, String message) {
    return new StudyEffect(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.of(new Problem("", code, message)),
        false,
        Optional.empty());
  }

  /** A study whose effect is known but not how certain it is. */
  public static StudyEffect withoutVariance(double estimate, String code, String message) {
    return new StudyEffect(
        OptionalDouble.of(estimate),
        OptionalDouble.empty(),
        Optional.of(new Problem("", code, message)),
        false,
        Optional.empty());
  }

  /** The same, saying that something was added to its cells. */
  StudyEffect withCellsAdded() {
    return new StudyEffect(estimate, variance, leftOut, true, standardised);
  }

  /** The same with what belongs to a standardised mean difference. */
  StudyEffect with(Standardised details) {
    return new StudyEffect(estimate, variance, leftOut, cellsAdded, Optional.of(details));
  }
}
