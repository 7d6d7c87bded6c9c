package gapwise.effect;

/**
 * Log odds ratio log(ad/bc), variance 1/a + 1/b + 1/c + 1/d (Woolf, Ann Hum Genet 1955;19:251).
 *
 * @param emptyCells what is added to zero cells
 * @param fromCounts whether studies are pooled from counts, with nothing added
 */
public record OddsRatio(EmptyCells emptyCells, boolean fromCounts)
    implements RatioOfCounts.OfTables {
  @Override
  public boolean onlyEvents(TwoByTwo table) {
    return table.nonEventTotal() == 0;
  }

  @Override
  public boolean isInfinite(TwoByTwo table) {
    return table.hasZero();
  }

  @Override
  public StudyEffect effect(TwoByTwo table) {
    ArmCounts i = table.intervention();
    ArmCounts c = table.comparator();
    return StudyEffect.of(
        Math.log(i.events() / i.nonEvents()) - Math.log(c.events() / c.nonEvents()),
        1 / i.events() + 1 / i.nonEvents() + 1 / c.events() + 1 / c.nonEvents());
  }
}
