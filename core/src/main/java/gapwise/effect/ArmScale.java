package gapwise.effect;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Adds to single groups with a zero what the plan says, then takes each group's effect. Single
 * groups are always kept, also those without an event.
 */
final class ArmScale {
  private ArmScale() {}

  /**
   * @param hasZero whether the scale has no finite value for the group as it is
   * @param plus the group with something added
   * @param effect the effect of a group for which the scale has a finite value
   * @param fromCounts whether groups are pooled from their counts, so that nothing is added and an
   *     infinite value of one does not matter
   */
  static <D> List<StudyEffect> effects(
      List<D> groups,
      EmptyCells asked,
      boolean fromCounts,
      Predicate<D> hasZero,
      BiFunction<D, Double, D> plus,
      Function<D, StudyEffect> effect) {
    EmptyCells rule = fromCounts ? asked.withoutAdding() : asked;
    boolean any = groups.stream().anyMatch(hasZero);
    List<StudyEffect> effects = new ArrayList<>();
    for (D group : groups) {
      double added = rule.addedTo(hasZero.test(group), any);
      D used = added > 0 ? plus.apply(group, added) : group;
      if (hasZero.test(used)) {
        effects.add(
            fromCounts
                ? StudyEffect.COUNTS_ONLY
                : StudyEffect.leftOut(
                    "study-left-out",
                    "its effect is infinite on this scale and the plan adds nothing to zero"
                        + " cells"));
      } else {
        StudyEffect one = effect.apply(used);
        effects.add(added > 0 ? one.withCellsAdded() : one);
      }
    }
    return effects;
  }

  /** Harmonic mean of positive sizes; empty input has none and is a mistake of the caller. */
  static <D> double harmonicMean(List<D> groups, ToDoubleFunction<D> size) {
    double reciprocals = 0;
    for (D group : groups) {
      reciprocals += 1 / size.applyAsDouble(group);
    }
    return groups.size() / reciprocals;
  }
}
