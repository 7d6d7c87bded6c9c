package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * Events over person-time of single groups: log(x/T), variance 1/x; or sqrt(x/T), variance 1/(4T),
 * which needs nothing added where there is no event.
 *
 * @param squareRoot whether the square root is pooled instead of the log
 * @param emptyCells what is added to counts of 0; used by the log only
 * @param fromCounts whether groups are pooled from their counts, with nothing added
 */
record IncidenceRate(boolean squareRoot, EmptyCells emptyCells, boolean fromCounts)
    implements Measure<ArmRate> {
  @Override
  public List<Role> roles() {
    return List.of(new Role("events", true), new Role("personTime", true));
  }

  @Override
  public Optional<ArmRate> read(Reported row) {
    return ArmRate.of(row);
  }

  @Override
  public List<StudyEffect> effects(List<ArmRate> studies) {
    if (squareRoot) {
      return studies.stream()
          .map(r -> StudyEffect.of(Math.sqrt(r.rate()), 1 / (4 * r.personTime())))
          .toList();
    }
    return ArmScale.effects(
        studies,
        emptyCells,
        fromCounts,
        rate -> rate.events() == 0,
        ArmRate::plus,
        rate -> StudyEffect.of(Math.log(rate.rate()), 1 / rate.events()));
  }

  @Override
  public BackTransform shown(List<ArmRate> pooled) {
    return squareRoot
        ? BackTransform.of(root -> Math.max(0, root) * Math.max(0, root))
        : BackTransform.EXPONENTIAL;
  }

  @Override
  public Optional<ShownStudy> shownStudy(ArmRate study, double level) {
    return Optional.of(new ShownStudy(study.rate(), RateInterval.EXACT_POISSON.of(study, level)));
  }
}
