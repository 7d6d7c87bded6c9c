package gapwise.effect.arms;

import gapwise.effect.ArmRate;
import gapwise.effect.EmptyCells;
import gapwise.effect.IncidenceRateRatio;
import gapwise.effect.Measure;
import gapwise.effect.Reported;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import java.util.List;
import java.util.Optional;

/**
 * Log incidence rates of arms, variance 1/events; see {@link IncidenceRateRatio}.
 *
 * @param emptyCells what is added to counts of 0
 */
record RatesOfArms(EmptyCells emptyCells) implements MultiArmRatio<ArmRate> {
  @Override
  public List<Measure.Role> roles() {
    return List.of(new Measure.Role("events", true), new Measure.Role("personTime", true));
  }

  @Override
  public Optional<ArmRate> read(Reported row) {
    return ArmRate.of(row);
  }

  @Override
  public boolean noEvents(ArmRate arm) {
    return arm.events() == 0;
  }

  @Override
  public boolean onlyEvents(ArmRate arm) {
    return false;
  }

  @Override
  public boolean hasZero(ArmRate arm) {
    return arm.events() == 0;
  }

  @Override
  public boolean isInfinite(ArmRate arm) {
    return arm.events() == 0;
  }

  @Override
  public ArmRate plus(ArmRate arm, double added) {
    return arm.plus(added);
  }

  @Override
  public ArmValue value(ArmRate arm) {
    return new ArmValue(Math.log(arm.rate()), 1 / arm.events());
  }
}
