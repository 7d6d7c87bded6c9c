package gapwise.effect;

/**
 * Log risk ratio log((a/n1)/(c/n2)), variance 1/a - 1/n1 + 1/c - 1/n2 (Katz et al., Biometrics
 * 1978;34:469).
 *
 * @param emptyCells what is added to zero cells
 * @param fromCounts whether studies are pooled from counts, with nothing added
 */
public record RiskRatio(EmptyCells emptyCells, boolean fromCounts)
    implements RatioOfCounts.OfTables {
  @Override
  public boolean onlyEvents(TwoByTwo table) {
    return false;
  }

  @Override
  public boolean isInfinite(TwoByTwo table) {
    return table.intervention().events() == 0 || table.comparator().events() == 0;
  }

  @Override
  public StudyEffect effect(TwoByTwo table) {
    ArmCounts i = table.intervention();
    ArmCounts c = table.comparator();
    return StudyEffect.of(
        Math.log(i.proportion()) - Math.log(c.proportion()),
        i.nonEvents() / i.events() / i.total() + c.nonEvents() / c.events() / c.total());
  }
}
