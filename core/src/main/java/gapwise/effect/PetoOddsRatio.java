package gapwise.effect;

import java.util.List;
import java.util.Optional;

/**
 * Peto's one-step log odds ratio (O - E)/V, variance 1/V, with the hypergeometric expectation and
 * variance of the events of the intervention group (Yusuf et al., Prog Cardiovasc Dis 1985;27:335).
 * Nothing is added to zero cells; tables without variance are left out. It misleads where effects
 * are large or groups differ much in size.
 */
record PetoOddsRatio() implements Measure<TwoByTwo> {
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
    return studies.stream().map(PetoOddsRatio::effect).toList();
  }

  private static StudyEffect effect(TwoByTwo table) {
    double variance = table.hypergeometricVariance();
    if (variance == 0) {
      boolean none = table.eventTotal() == 0;
      return StudyEffect.leftOut(
          none ? "no-events" : "all-events",
          none
              ? "no event in either group, so it says nothing of a ratio"
              : "every patient of both groups had the event, so it says nothing of a ratio");
    }
    double expected = table.intervention().total() * (table.eventTotal() / table.total());
    return StudyEffect.of((table.intervention().events() - expected) / variance, 1 / variance);
  }

  @Override
  public BackTransform shown(List<TwoByTwo> pooled) {
    return BackTransform.EXPONENTIAL;
  }
}
