package gapwise.analysis;

import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.synthesis.diagnostics.Influence;
import gapwise.synthesis.pooling.LeaveOneOut;
import gapwise.synthesis.pooling.PooledValue;
import gapwise.synthesis.pooling.PoolingSettings;
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
    PoolingSettings settings = synthesis.plan().settings();
    if (labels.size() < 2) {
      return;
    }
    if (ExactModels.asked(synthesis.plan().json())) {
      result.influence(LikelihoodInfluence.of(synthesis.pooler(), labels));
    } else if (synthesis.plan().counts().isPresent()) {
      result.influence(fromCounts(synthesis, labels));
      warnings.add(
          Result.Warning.of(
              "no-deletion-diagnostics",
              "counts are pooled without weights of single effects, so influence tells the result"
                  + " without each study but no residuals and no contributions"));
    } else if (LeaveOneOut.isSlow(settings) && labels.size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(labels.size()));
    } else {
      result.influence(
          of(
              Influence.of(synthesis.studies().sample(), settings),
              labels,
              settings.estimator().isPresent()));
    }
  }

  private static <D extends StudyData> InfluenceResult fromCounts(
      Synthesis<D> synthesis, List<String> labels) {
    return new InfluenceResult(
        omitted(
            synthesis
                .plan()
                .counts()
                .orElseThrow()
                .withoutEach(synthesis.studies().pooledData(), synthesis.plan().settings().level()),
            labels,
            false),
        List.of(),
        List.of());
  }

  private static List<InfluenceResult.Omitted> omitted(
      List<PooledValue> withoutEach, List<String> labels, boolean random) {
    List<InfluenceResult.Omitted> omitted = new ArrayList<>();
    for (int i = 0; i < labels.size(); i++) {
      Refit rest = new Refit(withoutEach.get(i), random);
      omitted.add(
          new InfluenceResult.Omitted(
              labels.get(i),
              rest.estimate(),
              rest.standardError(),
              rest.limit(Interval::lower),
              rest.limit(Interval::upper),
              rest.tauSquared(),
              rest.pooled().q()));
    }
    return omitted;
  }

  private static InfluenceResult of(Influence influence, List<String> labels, boolean random) {
    List<InfluenceResult.Diagnostic> diagnostics = new ArrayList<>();
    List<InfluenceResult.Contribution> contributions = new ArrayList<>();
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
    return new InfluenceResult(
        omitted(influence.withoutEach(), labels, random), diagnostics, contributions);
  }
}
