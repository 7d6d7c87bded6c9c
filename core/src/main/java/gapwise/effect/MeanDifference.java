package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Difference of means, intervention less comparator, variance s1^2/n1 + s2^2/n2 (Cochrane Handbook,
 * chapter 10). Of each group the mean at the end or its change from before.
 *
 * @param correlation of values before and after, where a row names none
 */
public record MeanDifference(OptionalDouble correlation) implements TwoMeans.Measured {
  @Override
  public List<Role> roles() {
    return Measures.withTest(
        Stream.of("intervention", "comparator")
            .flatMap(group -> Measures.meanOrChangeRoles(group).stream()));
  }

  @Override
  public Optional<TwoMeans> read(Reported row) {
    Optional<ArmMean> intervention = ArmMean.readOrChange(row, "intervention", correlation);
    Optional<ArmMean> comparator = ArmMean.readOrChange(row, "comparator", correlation);
    return TwoMeans.of(row, intervention, comparator);
  }

  @Override
  public StudyEffect effect(TwoMeans means) {
    ArmMean i = means.intervention();
    ArmMean c = means.comparator();
    double difference = i.mean().getAsDouble() - c.mean().getAsDouble();
    OptionalDouble first = i.squaredStandardError();
    OptionalDouble second = c.squaredStandardError();
    if (first.isEmpty() || second.isEmpty()) {
      return means.withoutSpread(difference);
    }
    return StudyEffect.of(difference, first.getAsDouble() + second.getAsDouble());
  }

  @Override
  public BackTransform shown(List<TwoMeans> pooled) {
    return BackTransform.NONE;
  }
}
