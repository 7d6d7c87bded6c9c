package gapwise.analysis;

import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.synthesis.diagnostics.Influence;
import java.util.ArrayList;
import java.util.List;

/** Everything again without each study. */
final class InfluencePart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return plan.json().path("influence").asBoolean();
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    List<String> labels = synthesis.studies().pooled().stream().map(Studies.Entry::label).toList();
    if (labels.size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(labels.size()));
    } else if (labels.size() > 1) {
      Influence influence = Influence.of(synthesis.studies().sample(), synthesis.plan().settings());
      if (synthesis.pooler() instanceof OfPosteriors posteriors) {
        influence = new Influence(posteriors.withoutEach(), List.of(), influence.contributions());
      }
      result.influence(of(influence, labels, synthesis.plan().settings().estimator().isPresent()));
    }
  }

  private static InfluenceResult of(Influence influence, List<String> labels, boolean random) {
    List<InfluenceResult.Omitted> omitted = new ArrayList<>();
    List<InfluenceResult.Diagnostic> diagnostics = new ArrayList<>();
    List<InfluenceResult.Contribution> contributions = new ArrayList<>();
    for (int i = 0; i < labels.size(); i++) {
      Refit rest = new Refit(influence.withoutEach().get(i), random);
      omitted.add(
          new InfluenceResult.Omitted(
              labels.get(i),
              rest.estimate(),
              rest.standardError(),
              rest.limit(Interval::lower),
              rest.limit(Interval::upper),
              rest.tauSquared(),
              rest.pooled().heterogeneity().q()));
    }
    for (int i = 0; i < influence.diagnostics().size(); i++) {
      Influence.Diagnostic d = influence.diagnostics().get(i);
      diagnostics.add(
          new InfluenceResult.Diagnostic(
              labels.get(i),
              d.studentisedResidual(),
              d.dffits(),
              d.cooksDistance(),
              d.covarianceRatio(),
              d.hat()));
    }
    for (int i = 0; i < influence.contributions().size(); i++) {
      Influence.Contribution c = influence.contributions().get(i);
      contributions.add(new InfluenceResult.Contribution(labels.get(i), c.toQ(), c.toEstimate()));
    }
    return new InfluenceResult(omitted, diagnostics, contributions);
  }
}
