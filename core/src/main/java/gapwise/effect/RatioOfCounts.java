package gapwise.effect;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What ratios of counts share: leaving out studies that say nothing of the ratio, then adding to
 * zero cells, in this order, so that a study that is left out adds nothing to others.
 *
 * @param <D> counts of two groups
 */
interface RatioOfCounts<D> {
  /**
   * Whether studies are pooled from their counts, so that an infinite ratio of one does not matter.
   */
  boolean fromCounts();

  /** Whether no patient of either group had the event. */
  boolean noEvents(D study);

  /** Whether every patient had the event and the ratio then says nothing. */
  boolean onlyEvents(D study);

  /** Whether a cell is 0. */
  boolean hasZero(D study);

  /** Whether the ratio is 0, infinite or 0/0. */
  boolean isInfinite(D study);

  /** The study with something added to each cell. */
  D plus(D study, double added);

  /** The effect of a study whose ratio is finite. */
  StudyEffect effect(D study);

  /** The effects of studies under a rule for zero cells. */
  default List<StudyEffect> effects(List<D> studies, EmptyCells asked) {
    EmptyCells rule = fromCounts() ? asked.withoutAdding() : asked;
    boolean anyZero = studies.stream().anyMatch(s -> hasZero(s) && !isLeftOut(s, rule));
    List<StudyEffect> effects = new ArrayList<>();
    for (D study : studies) {
      if (isLeftOut(study, rule)) {
        effects.add(leftOut(noEvents(study)));
        continue;
      }
      double added = rule.addedTo(hasZero(study), anyZero);
      D used = added > 0 ? plus(study, added) : study;
      if (isInfinite(used)) {
        effects.add(
            fromCounts()
                ? StudyEffect.COUNTS_ONLY
                : StudyEffect.leftOut(
                    "study-left-out",
                    "its ratio is 0, infinite or 0/0 and the plan adds nothing to zero cells"));
      } else {
        StudyEffect one = effect(used);
        effects.add(added > 0 ? one.withCellsAdded() : one);
      }
    }
    return effects;
  }

  private boolean isLeftOut(D study, EmptyCells rule) {
    return rule.uninformative() == EmptyCells.UninformativeStudies.LEAVE_OUT
        && (noEvents(study) || onlyEvents(study));
  }

  private static StudyEffect leftOut(boolean none) {
    return none
        ? StudyEffect.leftOut(
            "no-events", "no event in either group, so it says nothing of a ratio")
        : StudyEffect.leftOut(
            "all-events",
            "every patient of both groups had the event, so it says nothing of a ratio");
  }

  /** What ratios of fourfold tables share. */
  interface OfTables extends Measure<TwoByTwo>, RatioOfCounts<TwoByTwo> {
    /** What is added to zero cells. */
    EmptyCells emptyCells();

    @Override
    default List<Measure.Role> roles() {
      return Measures.twoGroups("events", "total");
    }

    @Override
    default Optional<TwoByTwo> read(Reported row) {
      return TwoByTwo.read(row);
    }

    @Override
    default List<StudyEffect> effects(List<TwoByTwo> studies) {
      return effects(studies, emptyCells());
    }

    @Override
    default boolean noEvents(TwoByTwo table) {
      return table.eventTotal() == 0;
    }

    @Override
    default boolean hasZero(TwoByTwo table) {
      return table.hasZero();
    }

    @Override
    default TwoByTwo plus(TwoByTwo table, double added) {
      return table.plus(added);
    }

    @Override
    default BackTransform shown(List<TwoByTwo> pooled) {
      return BackTransform.EXPONENTIAL;
    }
  }
}
