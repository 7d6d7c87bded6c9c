package gapwise.effect.arms;

import gapwise.effect.ArmCounts;
import gapwise.effect.EmptyCells;
import gapwise.effect.Measure;
import gapwise.effect.OddsRatio;
import gapwise.effect.Reported;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import java.util.List;
import java.util.Optional;

/**
 * Log odds of arms, variance 1/events + 1/non-events; see {@link OddsRatio}.
 *
 * @param emptyCells what is added to zero cells
 */
record OddsOfArms(EmptyCells emptyCells) implements MultiArmRatio<ArmCounts> {
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
    return arm.nonEvents() == 0;
  }

  @Override
  public boolean hasZero(ArmCounts arm) {
    return noEvents(arm) || onlyEvents(arm);
  }

  @Override
  public boolean isInfinite(ArmCounts arm) {
    return hasZero(arm);
  }

  @Override
  public ArmCounts plus(ArmCounts arm, double added) {
    return arm.plus(added);
  }

  @Override
  public ArmValue value(ArmCounts arm) {
    return new ArmValue(
        Math.log(arm.events() / arm.nonEvents()), 1 / arm.events() + 1 / arm.nonEvents());
  }
}
