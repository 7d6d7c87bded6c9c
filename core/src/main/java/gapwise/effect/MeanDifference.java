package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Difference of means, intervention less comparator, variance s1^2/n1 + s2^2/n2 (Cochrane Handbook,
 * chapter 10).
 */
public record MeanDifference() implements Measure<TwoMeans> {
  @Override
  public List<Role> roles() {
    return Measures.twoMeanRoles();
  }

  @Override
  public Optional<TwoMeans> read(Reported row) {
    return TwoMeans.read(row);
  }

  @Override
  public List<StudyEffect> effects(List<TwoMeans> studies) {
    return studies.stream().map(MeanDifference::effect).toList();
  }

  private static StudyEffect effect(TwoMeans means) {
    ArmMean i = means.intervention();
    ArmMean c = means.comparator();
    double difference = i.mean().getAsDouble() - c.mean().getAsDouble();
    OptionalDouble first = i.squaredStandardError();
    OptionalDouble second = c.squaredStandardError();
    if (first.isEmpty() || second.isEmpty()) {
      return Measures.withoutSpread(difference, first.isEmpty() ? i : c);
    }
    return StudyEffect.of(difference, first.getAsDouble() + second.getAsDouble());
  }

  @Override
  public boolean fromMedian(TwoMeans study) {
    return study.fromMedian();
  }

  @Override
  public boolean looksSkewed(TwoMeans study) {
    return study.looksSkewed();
  }

  @Override
  public BackTransform shown(List<TwoMeans> pooled) {
    return BackTransform.NONE;
  }
}
