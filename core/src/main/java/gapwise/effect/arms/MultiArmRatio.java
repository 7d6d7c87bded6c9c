package gapwise.effect.arms;

import gapwise.effect.BackTransform;
import gapwise.effect.EmptyCells;
import gapwise.effect.StudyData;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import java.util.ArrayList;
import java.util.List;

/**
 * What ratios of counts share with any number of arms: studies that say nothing of the ratio are
 * left out, then something is added to all arms of a study in which one has a zero.
 *
 * @param <D> counts of an arm
 */
interface MultiArmRatio<D extends StudyData> extends MultiArmMeasure<D> {
  /** What is done about zero cells. */
  EmptyCells emptyCells();

  /** Whether no patient of the arm had the event. */
  boolean noEvents(D arm);

  /** Whether every patient of the arm had the event, and the ratio says nothing if all arms do. */
  boolean onlyEvents(D arm);

  /** Whether a cell of the arm is 0. */
  boolean hasZero(D arm);

  /** Whether the value of the arm is infinite. */
  boolean isInfinite(D arm);

  /** The arm with something added to its cells. */
  D plus(D arm, double added);

  /** The value of an arm for which it is finite. */
  ArmValue value(D arm);

  @Override
  default List<MultiArmEffect> effects(List<List<D>> studies) {
    boolean any =
        studies.stream().anyMatch(s -> s.stream().anyMatch(this::hasZero) && !isLeftOut(s));
    List<MultiArmEffect> effects = new ArrayList<>();
    for (List<D> study : studies) {
      effects.add(isLeftOut(study) ? leftOut(study) : effect(study, any));
    }
    return effects;
  }

  private MultiArmEffect effect(List<D> study, boolean anyHasZero) {
    double added = emptyCells().addedTo(study.stream().anyMatch(this::hasZero), anyHasZero);
    List<D> used = added > 0 ? study.stream().map(arm -> plus(arm, added)).toList() : study;
    if (used.stream().anyMatch(this::isInfinite)) {
      return MultiArmEffect.leftOut(
          "study-left-out",
          "a ratio of it is 0, infinite or 0/0 and the plan adds nothing to zero cells");
    }
    MultiArmEffect effect = ArmDifferences.of(used, this::value);
    return added > 0 ? effect.withCellsAdded() : effect;
  }

  private boolean isLeftOut(List<D> study) {
    return emptyCells().uninformative() == EmptyCells.UninformativeStudies.LEAVE_OUT
        && (study.stream().allMatch(this::noEvents) || study.stream().allMatch(this::onlyEvents));
  }

  private MultiArmEffect leftOut(List<D> study) {
    return study.stream().allMatch(this::noEvents)
        ? MultiArmEffect.leftOut("no-events", "no event in any arm, so it says nothing of a ratio")
        : MultiArmEffect.leftOut(
            "all-events", "every patient of all arms had the event, so it says nothing of a ratio");
  }

  @Override
  default BackTransform shown() {
    return BackTransform.EXPONENTIAL;
  }
}
