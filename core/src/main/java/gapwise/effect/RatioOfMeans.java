package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Log ratio of means log(m1/m2), variance s1^2/(n1 m1^2) + s2^2/(n2 m2^2) (Hedges, Gurevitch and
 * Curtis, Ecology 1999;80:1150). Means must be above 0.
 */
public record RatioOfMeans() implements TwoMeans.Measured {
  @Override
  public List<Role> roles() {
    return Measures.twoMeanRoles();
  }

  @Override
  public Optional<TwoMeans> read(Reported row) {
    return TwoMeans.read(row);
  }

  @Override
  public StudyEffect effect(TwoMeans means) {
    ArmMean i = means.intervention();
    ArmMean c = means.comparator();
    double first = i.mean().getAsDouble();
    double second = c.mean().getAsDouble();
    if (first <= 0 || second <= 0) {
      return StudyEffect.leftOut(
          "mean-not-positive",
          "a ratio of means needs both above 0, found " + first + ", " + second);
    }
    double ratio = Math.log(first) - Math.log(second);
    OptionalDouble one = i.squaredStandardError();
    OptionalDouble two = c.squaredStandardError();
    if (one.isEmpty() || two.isEmpty()) {
      return means.withoutSpread(ratio);
    }
    return StudyEffect.of(
        ratio, one.getAsDouble() / first / first + two.getAsDouble() / second / second);
  }

  @Override
  public BackTransform shown(List<TwoMeans> pooled) {
    return BackTransform.EXPONENTIAL;
  }
}
