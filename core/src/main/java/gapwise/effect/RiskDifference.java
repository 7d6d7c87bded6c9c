package gapwise.effect;

import java.util.List;
import java.util.Optional;

/** Risk difference a/n1 - c/n2, variance ab/n1^3 + cd/n2^3 (Cochrane Handbook, chapter 10). */
public record RiskDifference() implements Measure<TwoByTwo> {
  @Override
  public List<Role> roles() {
    return Measures.twoGroups("events", "total");
  }

  @Override
  public Optional<TwoByTwo> read(Reported row) {
    return TwoByTwo.read(row);
  }

  @Override
  public List<StudyEffect> effects(List<TwoByTwo> studies) {
    return studies.stream().map(RiskDifference::effect).toList();
  }

  private static StudyEffect effect(TwoByTwo table) {
    return StudyEffect.of(
        table.intervention().proportion() - table.comparator().proportion(),
        variance(table.intervention()) + variance(table.comparator()));
  }

  private static double variance(ArmCounts arm) {
    return arm.proportion() * (arm.nonEvents() / arm.total()) / arm.total();
  }

  @Override
  public BackTransform shown(List<TwoByTwo> pooled) {
    return BackTransform.of(difference -> Math.max(-1, Math.min(1, difference)));
  }
}
