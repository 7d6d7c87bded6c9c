package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * Log risk ratio log((a/n1)/(c/n2)), variance 1/a - 1/n1 + 1/c - 1/n2 (Katz et al., Biometrics
 * 1978;34:469).
 *
 * @param emptyCells what is added to zero cells
 * @param fromCounts whether studies are pooled from counts, with nothing added
 */
public record RiskRatio(EmptyCells emptyCells, boolean fromCounts)
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
    return false;
  }

  @Override
  public boolean hasZero(TwoByTwo table) {
    return table.hasZero();
  }

  @Override
  public boolean isInfinite(TwoByTwo table) {
    return table.intervention().events() == 0 || table.comparator().events() == 0;
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
        Math.log(i.proportion()) - Math.log(c.proportion()),
        i.nonEvents() / i.events() / i.total() + c.nonEvents() / c.events() / c.total());
  }

  @Override
  public BackTransform shown(List<TwoByTwo> pooled) {
    return BackTransform.EXPONENTIAL;
  }
}
