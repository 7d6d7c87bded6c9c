package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.synthesis.multilevel.ThreeLevelFit;
import java.util.List;

/** The variances between clusters and within them. */
final class ThreeLevelPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return plan.json().path("model").asText().equals("three-level");
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    if (synthesis.pooler() instanceof ClusterPooler clusters) {
      clusters
          .whole()
          .fit()
          .filter(fit -> fit.told() != ThreeLevelFit.Told.ONLY_SUM)
          .ifPresent(
              fit ->
                  result.threeLevel(
                      new ThreeLevelResult(fit.betweenVariance(), fit.withinVariance())));
    }
  }
}
