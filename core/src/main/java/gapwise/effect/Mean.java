package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Mean of single groups: raw, variance s^2/n; or its log, variance s^2/(n m^2) (Hedges, Gurevitch
 * and Curtis, Ecology 1999;80:1150).
 *
 * @param log whether the log of the mean is pooled; means must then be above 0
 */
record Mean(boolean log) implements Measure<ArmMean> {
  @Override
  public List<Role> roles() {
    return Measures.meanRoles("");
  }

  @Override
  public Optional<ArmMean> read(Reported row) {
    return ArmMean.read(row, "");
  }

  @Override
  public List<StudyEffect> effects(List<ArmMean> studies) {
    return studies.stream().map(this::effect).toList();
  }

  private StudyEffect effect(ArmMean arm) {
    double mean = arm.mean().getAsDouble();
    if (log && mean <= 0) {
      return StudyEffect.leftOut(
          "mean-not-positive", "its mean is " + mean + " and a log needs one above 0");
    }
    double estimate = log ? Math.log(mean) : mean;
    OptionalDouble squared = arm.squaredStandardError();
    if (squared.isEmpty()) {
      return Measures.withoutSpread(estimate, arm);
    }
    double variance = squared.getAsDouble();
    return StudyEffect.of(estimate, log ? variance / mean / mean : variance);
  }

  @Override
  public boolean fromMedian(ArmMean study) {
    return study.fromMedian();
  }

  @Override
  public boolean looksSkewed(ArmMean study) {
    return study.looksSkewed();
  }

  @Override
  public BackTransform shown(List<ArmMean> pooled) {
    return log ? BackTransform.EXPONENTIAL : BackTransform.NONE;
  }
}
