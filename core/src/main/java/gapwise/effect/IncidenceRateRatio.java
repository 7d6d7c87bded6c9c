package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * Log ratio of two rates, log((x1/T1)/(x2/T2)), variance 1/x1 + 1/x2 (Greenland and Robins,
 * Biometrics 1985;41:55).
 *
 * @param emptyCells what is added to counts of 0
 * @param fromCounts whether studies are pooled from counts, with nothing added
 */
public record IncidenceRateRatio(EmptyCells emptyCells, boolean fromCounts)
    implements Measure<TwoRates>, RatioOfCounts<TwoRates> {
  @Override
  public List<Role> roles() {
    return Measures.twoGroups("events", "personTime");
  }

  @Override
  public Optional<TwoRates> read(Reported row) {
    return TwoRates.read(row);
  }

  @Override
  public List<StudyEffect> effects(List<TwoRates> studies) {
    return effects(studies, emptyCells);
  }

  @Override
  public boolean noEvents(TwoRates rates) {
    return rates.eventTotal() == 0;
  }

  @Override
  public boolean onlyEvents(TwoRates rates) {
    return false;
  }

  @Override
  public boolean hasZero(TwoRates rates) {
    return rates.intervention().events() == 0 || rates.comparator().events() == 0;
  }

  @Override
  public boolean isInfinite(TwoRates rates) {
    return hasZero(rates);
  }

  @Override
  public TwoRates plus(TwoRates rates, double added) {
    return new TwoRates(rates.intervention().plus(added), rates.comparator().plus(added));
  }

  @Override
  public StudyEffect effect(TwoRates rates) {
    ArmRate i = rates.intervention();
    ArmRate c = rates.comparator();
    return StudyEffect.of(Math.log(i.rate()) - Math.log(c.rate()), 1 / i.events() + 1 / c.events());
  }

  @Override
  public BackTransform shown(List<TwoRates> pooled) {
    return BackTransform.EXPONENTIAL;
  }
}
