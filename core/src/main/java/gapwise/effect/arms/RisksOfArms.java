package gapwise.effect.arms;

import gapwise.effect.ArmCounts;
import gapwise.effect.EmptyCells;
import gapwise.effect.Measure;
import gapwise.effect.Reported;
import gapwise.effect.RiskRatio;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import java.util.List;
import java.util.Optional;

/**
 * Log risks of arms, variance 1/events - 1/total; see {@link RiskRatio}.
 *
 * @param emptyCells what is added to zero cells
 */
record RisksOfArms(EmptyCells emptyCells) implements MultiArmRatio<ArmCounts> {
  @Override
  public List<Measure.Role> roles() {
    return MultiArmMeasures.counts();
  }

  @Override
  public Optional<ArmCounts> read(Reported row) {
    return ArmCounts.of(row);
  }

  @Override
  public boolean noEvents(ArmCounts arm) {
    return arm.events() == 0;
  }

  @Override
  public boolean onlyEvents(ArmCounts arm) {
    return false;
  }

  @Override
  public boolean hasZero(ArmCounts arm) {
    return arm.events() == 0 || arm.nonEvents() == 0;
  }

  @Override
  public boolean isInfinite(ArmCounts arm) {
    return arm.events() == 0;
  }

  @Override
  public ArmCounts plus(ArmCounts arm, double added) {
    return arm.plus(added);
  }

  @Override
  public ArmValue value(ArmCounts arm) {
    return new ArmValue(Math.log(arm.proportion()), arm.nonEvents() / arm.events() / arm.total());
  }
}
