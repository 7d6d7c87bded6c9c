package gapwise.effect;

import java.util.List;
import java.util.Optional;

/** What ratios of fourfold tables share. */
interface RatioOfTables extends Measure<TwoByTwo>, RatioOfCounts<TwoByTwo> {
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
