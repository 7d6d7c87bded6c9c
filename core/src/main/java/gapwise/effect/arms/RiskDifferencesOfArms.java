package gapwise.effect.arms;

import gapwise.effect.ArmCounts;
import gapwise.effect.BackTransform;
import gapwise.effect.Measure;
import gapwise.effect.Reported;
import gapwise.effect.RiskDifference;
import gapwise.effect.arms.ArmDifferences.ArmValue;
import java.util.List;
import java.util.Optional;

/** Proportions of arms, variance p (1 - p)/n; nothing is added; see {@link RiskDifference}. */
record RiskDifferencesOfArms() implements MultiArmMeasure<ArmCounts> {
  @Override
  public List<Measure.Role> roles() {
    return MultiArmMeasures.counts();
  }

  @Override
  public Optional<ArmCounts> read(Reported row) {
    return ArmCounts.of(row);
  }

  @Override
  public List<MultiArmEffect> effects(List<List<ArmCounts>> studies) {
    return studies.stream()
        .map(arms -> ArmDifferences.of(arms, RiskDifferencesOfArms::value))
        .toList();
  }

  private static ArmValue value(ArmCounts arm) {
    return new ArmValue(
        arm.proportion(), arm.proportion() * (arm.nonEvents() / arm.total()) / arm.total());
  }

  @Override
  public BackTransform shown() {
    return BackTransform.of(difference -> Math.max(-1, Math.min(1, difference)));
  }
}
