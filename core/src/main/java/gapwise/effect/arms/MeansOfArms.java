package gapwise.effect.arms;

import gapwise.effect.ArmMean;
import gapwise.effect.BackTransform;
import gapwise.effect.MeanDifference;
import gapwise.effect.Measure;
import gapwise.effect.Measures;
import gapwise.effect.RatioOfMeans;
import gapwise.effect.Reported;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import gapwise.problem.Problem;
import java.util.List;
import java.util.Optional;

/**
 * Means of arms, variance sd^2/n, or their logs, variance sd^2/(n mean^2); see {@link
 * MeanDifference} and {@link RatioOfMeans}. Each arm keeps its own standard deviation.
 *
 * @param ratio whether logs are taken
 */
record MeansOfArms(boolean ratio) implements MultiArmMeasure<ArmMean> {
  @Override
  public List<Measure.Role> roles() {
    return Measures.meanRoles("");
  }

  @Override
  public Optional<ArmMean> read(Reported row) {
    return ArmMean.read(row, "");
  }

  @Override
  public Optional<Problem> unusable(ArmMean arm) {
    if (ratio && arm.mean().orElseThrow() <= 0) {
      return MultiArmMeasures.because(
          "mean-not-positive",
          "a ratio of means needs means above 0, found " + arm.mean().getAsDouble());
    }
    return MultiArmMeasures.withoutSpread(arm);
  }

  @Override
  public boolean fromMedian(ArmMean arm) {
    return arm.fromMedian();
  }

  @Override
  public List<MultiArmEffect> effects(List<List<ArmMean>> studies) {
    return studies.stream().map(arms -> ArmDifferences.of(arms, this::value)).toList();
  }

  private ArmValue value(ArmMean arm) {
    double mean = arm.mean().orElseThrow();
    double variance = arm.squaredStandardError().orElseThrow();
    return ratio
        ? new ArmValue(Math.log(mean), variance / mean / mean)
        : new ArmValue(mean, variance);
  }

  @Override
  public BackTransform shown() {
    return ratio ? BackTransform.EXPONENTIAL : BackTransform.NONE;
  }
}
