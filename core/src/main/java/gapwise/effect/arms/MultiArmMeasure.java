package gapwise.effect.arms;

import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.Measures;
import gapwise.effect.Reported;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * A measure that compares any number of arms of a study: how the row of one arm is read, and the
 * effects of the arms against the first with their covariances. With two arms it is the measure of
 * the same name in {@link Measures}. Listed in {@link MultiArmMeasures}.
 *
 * @param <D> what an arm must report
 */
public interface MultiArmMeasure<D extends StudyData> {
  /** Every role the row of an arm may have, the ones it cannot do without first. */
  List<Measure.Role> roles();

  /**
   * Reads the row of an arm.
   *
   * @return empty if something is missing or wrong, which has then been noted in the row
   */
  Optional<D> read(Reported row);

  /** Why an arm that was read cannot be compared with others; empty if it can. */
  default Optional<Problem> unusable(D arm) {
    return Optional.empty();
  }

  /** Whether the numbers of the arm were worked out from a median. */
  default boolean fromMedian(D arm) {
    return false;
  }

  /**
   * The effects of each study, in their order. All at once, because what is added to zero cells can
   * depend on the other studies.
   *
   * @param studies the usable arms of each, two or more
   */
  List<MultiArmEffect> effects(List<List<D>> studies);

  /** The way back to what people read. */
  BackTransform shown();
}
