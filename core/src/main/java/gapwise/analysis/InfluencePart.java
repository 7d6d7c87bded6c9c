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
    return plan.json().path("influence").asBoolean() && !plan.json().has("moderators");
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    List<String> labels = synthesis.studies().pooled().stream().map(Studies.Entry::label).toList();
    PoolingSettings settings = synthesis.plan().settings();
    if (labels.size() < 2) {
      return;
    }
    if (synthesis.plan().counts().isPresent()) {
      result.influence(fromCounts(synthesis, labels));
      warnings.add(
          Result.Warning.of(
              "no-deletion-diagnostics",
              "counts are pooled without weights of single effects, so influence tells the result"
                  + " without each study but no residuals and no contributions"));
    } else if (isSlow(synthesis.plan()) && labels.size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(labels.size()));
    } else if (isFittedAnew(synthesis.plan())) {
      result.influence(fittedAnew(synthesis, labels, warnings));
    } else {
      result.influence(
          of(
              Influence.of(synthesis.studies().sample(), settings),
              labels,
              settings.estimator().isPresent()));
    }
  }

  private static <D extends StudyData> InfluenceResult fittedAnew(
      Synthesis<D> synthesis, List<String> labels, List<Result.Warning> warnings) {
    if (!synthesis.plan().cluster().isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "no-deletion-diagnostics",
              "rows of one cluster depend on each other, so influence tells the result without"
                  + " each row but no residuals and no contributions"));
    }
    boolean spread = !BayesianPart.isAskedBy(synthesis.plan().json());
    return new InfluenceResult(
        omitted(LikelihoodInfluence.withoutEach(synthesis.pooler()), labels, spread),
        List.of(),
        List.of());
  }

  private static boolean isSlow(SynthesisPlan plan) {
    return isFittedAnew(plan) || LeaveOneOut.isSlow(plan.settings());
  }

  /** Whether the model has no weights of single effects, so that only whole fits tell. */
  private static boolean isFittedAnew(SynthesisPlan plan) {
    return ExactModels.asked(plan.json())
        || BayesianPart.isAskedBy(plan.json())
        || !plan.cluster().isEmpty();
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
    List<InfluenceResult.OfOneStudy> ofEachStudy = new ArrayList<>();
    List<InfluenceResult.Contribution> contributions = new ArrayList<>();
    for (int i = 0; i < influence.diagnostics().size(); i++) {
      Influence.Diagnostic d = influence.diagnostics().get(i);
      ofEachStudy.add(
          new InfluenceResult.OfOneStudy(
              labels.get(i),
              d.leverage(),
              d.studentisedResidual(),
              d.standardisedChange(),
              d.cooksDistance(),
              d.covarianceRatio()));
    }
    for (int i = 0; i < influence.contributions().size(); i++) {
      Influence.Contribution c = influence.contributions().get(i);
      contributions.add(new InfluenceResult.Contribution(labels.get(i), c.toQ(), c.toEstimate()));
    }
    return new InfluenceResult(
        omitted(influence.withoutEach(), labels, random), ofEachStudy, contributions);
  }
}
