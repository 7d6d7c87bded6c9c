package gapwise.analysis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.effect.StudyData;
import gapwise.synthesis.diagnostics.Influence;
import gapwise.synthesis.pooling.LeaveOneOut;
import gapwise.synthesis.pooling.PooledValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Everything again without each study. */
public final class InfluencePart {
  private InfluencePart() {}

  /**
   * Works it out; empty where it cannot be told.
   *
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> Optional<InfluenceResult> of(
      Synthesis<D> synthesis, List<Result.Warning> warnings) {
    List<String> labels = synthesis.studies().pooled().stream().map(Studies.Entry::label).toList();
    if (labels.size() < 2) {
      return Optional.empty();
    }
    Model model = synthesis.plan().model();
    if (model instanceof CountsModel counts) {
      warnings.add(withoutDiagnostics(say("analysis.influence-of-counts")));
      return Optional.of(fromCounts(synthesis, counts, labels, warnings));
    }
    if (isSlow(model) && labels.size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(labels.size()));
      return Optional.empty();
    }
    if (model.deletion() == Model.Deletion.DIAGNOSTICS) {
      return Optional.of(
          of(
              Influence.of(synthesis.studies().sample(), model.settings()),
              labels,
              model.hasSpread(),
              warnings));
    }
    if (model.cluster().isPresent()) {
      warnings.add(withoutDiagnostics(say("analysis.influence-of-clusters")));
    }
    return Optional.of(
        new InfluenceResult(
            omitted(
                LikelihoodInfluence.withoutEach(synthesis.pooler()),
                labels,
                model.deletion() != Model.Deletion.POSTERIOR,
                warnings),
            List.of(),
            List.of()));
  }

  private static Result.Warning withoutDiagnostics(String why) {
    return Result.Warning.of("no-deletion-diagnostics", why);
  }

  private static boolean isSlow(Model model) {
    return model.deletion() != Model.Deletion.DIAGNOSTICS || LeaveOneOut.isSlow(model.settings());
  }

  private static <D extends StudyData> InfluenceResult fromCounts(
      Synthesis<D> synthesis,
      CountsModel model,
      List<String> labels,
      List<Result.Warning> warnings) {
    return new InfluenceResult(
        omitted(
            model.counts().withoutEach(synthesis.studies().pooledData(), synthesis.plan().level()),
            labels,
            false,
            warnings),
        List.of(),
        List.of());
  }

  private static List<InfluenceResult.Omitted> omitted(
      List<PooledValue> withoutEach,
      List<String> labels,
      boolean random,
      List<Result.Warning> warnings) {
    List<InfluenceResult.Omitted> omitted = new ArrayList<>();
    List<String> withoutWidth = new ArrayList<>();
    for (int i = 0; i < labels.size(); i++) {
      Refit rest = new Refit(withoutEach.get(i), random);
      if (rest.isWithoutWidth()) {
        withoutWidth.add(say("analysis.without", Map.of("study", labels.get(i))));
      }
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
    StudyWarnings.entriesWithoutWidth(withoutWidth).ifPresent(warnings::add);
    return omitted;
  }

  private static InfluenceResult of(
      Influence influence, List<String> labels, boolean random, List<Result.Warning> warnings) {
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
        omitted(influence.withoutEach(), labels, random, warnings), ofEachStudy, contributions);
  }
}
