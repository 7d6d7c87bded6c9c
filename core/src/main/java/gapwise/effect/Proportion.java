package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Events among patients of single groups. The scales are the constants of {@link ProportionScale}.
 *
 * @param scale on which proportions are pooled
 * @param emptyCells used by logit and log only
 * @param backTransformN patients for the way back from the double arcsine; empty for the harmonic
 *     mean of the totals
 * @param alsoWith further numbers of patients, each above 0
 * @param fromCounts whether groups are pooled from their counts, with nothing added
 */
record Proportion(
    ProportionScale scale,
    EmptyCells emptyCells,
    OptionalDouble backTransformN,
    List<Double> alsoWith,
    boolean fromCounts)
    implements Measure<ArmCounts> {
  Proportion {
    alsoWith = List.copyOf(alsoWith);
  }

  @Override
  public List<Role> roles() {
    return List.of(new Role("events", true), new Role("total", true));
  }

  @Override
  public Optional<ArmCounts> read(Reported row) {
    return ArmCounts.read(row, "");
  }

  @Override
  public List<StudyEffect> effects(List<ArmCounts> studies) {
    return ArmScale.effects(
        studies, emptyCells, fromCounts, scale::isInfinite, ArmCounts::plus, scale::effect);
  }

  @Override
  public BackTransform shown(List<ArmCounts> pooled) {
    if (scale != ProportionScale.DOUBLE_ARCSINE || pooled.isEmpty()) {
      return BackTransform.of(scale::toProportion);
    }
    double n = backTransformN.orElseGet(() -> ArmScale.harmonicMean(pooled, ArmCounts::total));
    return withN(n, alsoWith.stream().map(other -> withN(other, List.of())).toList());
  }

  private static BackTransform withN(double n, List<BackTransform> also) {
    return new BackTransform(
        value -> DoubleArcsine.toProportion(value, n), OptionalDouble.of(n), also);
  }

  @Override
  public Optional<ShownStudy> shownStudy(ArmCounts study, double level) {
    return Optional.of(
        new ShownStudy(study.proportion(), ProportionInterval.CLOPPER_PEARSON.of(study, level)));
  }
}
