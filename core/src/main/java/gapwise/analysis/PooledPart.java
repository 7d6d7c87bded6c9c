package gapwise.analysis;

import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Heterogeneity;
import gapwise.synthesis.pooling.Pooled;
import java.util.List;

/** The rows with their weights, the pooled value and how far results differ. */
final class PooledPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return true;
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    Studies<D> studies = synthesis.studies();
    Pooled pooled = synthesis.pooler().all();
    if (synthesis.pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(studies));
    } else {
      warnings.addAll(StudyWarnings.of(pooled.warnings()));
    }
    BackTransform back = synthesis.measure().shown(studies.pooledData());
    if (back.n().isPresent() && pooled.mean().isPresent()) {
      warnings.add(
          Result.Warning.of(
              "back-transform-depends-on-n",
              "the way back from the double arcsine needs one number of patients, here "
                  + back.n().getAsDouble()
                  + "; another number gives another proportion, and where totals differ much it can"
                  + " mislead (Schwarzer et al., Res Synth Methods 2019;10:476): read"
                  + " shown.exactLikelihood beside it"));
    }
    ExactShown exact = new ExactShown(synthesis.plan());
    result
        .studies(
            StudyTable.rows(
                studies,
                synthesis.measure(),
                pooled.weights(),
                synthesis.plan().settings().level()))
        .summary(exact.with(Summaries.summary(pooled, back), pooled, studies.pooledData()))
        .onlyLimit(exact.limit(pooled))
        .fit(Summaries.fit(pooled));
    if (!pooled.heterogeneity().equals(Heterogeneity.UNKNOWN)) {
      result.heterogeneity(Summaries.heterogeneity(pooled.heterogeneity()));
    }
  }
}
