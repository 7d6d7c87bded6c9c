package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Heterogeneity;
import gapwise.synthesis.regression.Regression;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The rows with their weights, and effects explained by moderators. */
final class RegressionPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return ModeratorQuestion.asked(plan);
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    ModeratorQuestion<D> question = ModeratorQuestion.of(synthesis, warnings);
    JsonNode asked = synthesis.plan().json().path("predictions");
    ModeratorPredictions predictions =
        ModeratorPredictions.of(asked, question.design(), question.values());
    Regression regression = question.fit();
    if (synthesis.pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(synthesis.studies()));
    } else {
      warnings.addAll(StudyWarnings.of(regression.warnings()));
    }
    result.studies(rows(synthesis, question.design(), regression)).fit(top(regression));
    if (!regression.heterogeneity().equals(Heterogeneity.UNKNOWN)) {
      result.heterogeneity(Summaries.heterogeneity(regression.heterogeneity()));
    }
    regression
        .fit()
        .map(
            fit ->
                new RegressionTelling<>(question, fit, warnings)
                    .told(regression.heterogeneity(), predictions))
        .ifPresent(result::regression);
  }

  private static Optional<Result.Fit> top(Regression regression) {
    return regression
        .likelihood()
        .map(one -> new Result.Fit(one.logLikelihood(), one.restricted(), one.converged()));
  }

  private static <D extends StudyData> List<Result.Study> rows(
      Synthesis<D> synthesis, ModeratorDesign design, Regression regression) {
    List<Double> weights = regression.fit().map(Regression.Fit::weights).orElse(List.of());
    double sum = weights.stream().mapToDouble(Double::doubleValue).sum();
    Map<Integer, Double> shares = new HashMap<>();
    for (int i = 0; i < weights.size(); i++) {
      shares.put(design.places().get(i), weights.get(i) / sum);
    }
    return StudyTable.rows(
        synthesis.studies(),
        synthesis.measure(),
        pooled ->
            shares.containsKey(pooled)
                ? OptionalDouble.of(shares.get(pooled))
                : OptionalDouble.empty(),
        synthesis.plan().settings().level());
  }
}
