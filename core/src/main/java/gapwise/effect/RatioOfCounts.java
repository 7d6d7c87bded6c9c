package gapwise.effect;

import java.util.ArrayList;
import java.util.List;

/**
 * What odds ratio and risk ratio share: leaving out tables that say nothing of the ratio, then
 * adding to zero cells, in this order, so that a table that is left out adds nothing to others.
 */
final class RatioOfCounts {
  private RatioOfCounts() {}

  /** The effect of a table whose ratio is finite. */
  interface TableEffect {
    StudyEffect of(TwoByTwo table);
  }

  /** Whether a ratio has no finite value for a table. */
  interface Infinite {
    boolean test(TwoByTwo table);
  }

  static List<StudyEffect> effects(
      List<TwoByTwo> studies,
      ZeroCells rule,
      boolean allEventsSayNothing,
      Infinite infinite,
      TableEffect effect) {
    boolean anyZero =
        studies.stream().anyMatch(t -> t.hasZero() && !isLeftOut(t, rule, allEventsSayNothing));
    List<StudyEffect> effects = new ArrayList<>();
    for (TwoByTwo table : studies) {
      if (isLeftOut(table, rule, allEventsSayNothing)) {
        boolean none = table.eventTotal() == 0;
        effects.add(
            StudyEffect.leftOut(
                none ? "no-events" : "all-events",
                none
                    ? "no event in either group, so it says nothing of a ratio"
                    : "every patient of both groups had the event, so it says nothing of a ratio"));
        continue;
      }
      double added = rule.addedTo(table.hasZero(), anyZero);
      TwoByTwo used = added > 0 ? table.plus(added) : table;
      if (infinite.test(used)) {
        effects.add(
            StudyEffect.leftOut(
                "study-left-out",
                "its ratio is 0, infinite or 0/0 and the plan adds nothing to zero cells"));
      } else {
        StudyEffect one = effect.of(used);
        effects.add(added > 0 ? one.withCellsAdded() : one);
      }
    }
    return effects;
  }

  private static boolean isLeftOut(TwoByTwo table, ZeroCells rule, boolean allEventsSayNothing) {
    return rule.noEvents() == ZeroCells.NoEvents.LEAVE_OUT
        && (table.eventTotal() == 0 || (allEventsSayNothing && table.nonEventTotal() == 0));
  }
}
