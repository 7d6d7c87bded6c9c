package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * Log odds ratio log(ad/bc), variance 1/a + 1/b + 1/c + 1/d (Woolf, Ann Hum Genet 1955;19:251).
 *
 * @param emptyCells what is added to zero cells
 * @param fromCounts whether studies are pooled from counts, with nothing added
 */
public record OddsRatio(EmptyCells emptyCells, boolean fromCounts)
    implements Measure<TwoByTwo>, RatioOfCounts<TwoByTwo> {
  @Override
  public List<Role> roles() {
    return Measures.twoGroups("events", "total");
  }

  @Override
  public Optional<TwoByTwo> read(Reported row) {
    return TwoByTwo.read(row);
  }

  @Override
  public List<StudyEffect> effects(List<TwoByTwo> studies) {
    return effects(studies, emptyCells);
  }

  @Override
  public boolean noEvents(TwoByTwo table) {
    return table.eventTotal() == 0;
  }

  @Override
  public boolean onlyEvents(TwoByTwo table) {
    return table.nonEventTotal() == 0;
  }

  @Override
  public boolean hasZero(TwoByTwo table) {
    return table.hasZero();
  }

  @Override
  public boolean isInfinite(TwoByTwo table) {
    return table.hasZero();
  }

  @Override
  public TwoByTwo plus(TwoByTwo table, double added) {
    return table.plus(added);
  }

  @Override
  public StudyEffect effect(TwoByTwo table) {
    ArmCounts i = table.intervention();
    ArmCounts c = table.comparator();
    return StudyEffect.of(
        Math.log(i.events() / i.nonEvents()) - Math.log(c.events() / c.nonEvents()),
        1 / i.events() + 1 / i.nonEvents() + 1 / c.events() + 1 / c.nonEvents());
  }

  @Override
  public BackTransform shown(List<TwoByTwo> pooled) {
    return BackTransform.EXPONENTIAL;
  }
}
