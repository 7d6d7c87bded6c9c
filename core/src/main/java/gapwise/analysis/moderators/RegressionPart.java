package gapwise.analysis.moderators;

import gapwise.analysis.pooling.ExactModel;
import gapwise.analysis.pooling.PooledResult;
import gapwise.analysis.pooling.StudyTable;
import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.pooling.Summaries;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.regression.Regression;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The rows with their weights, and effects explained by moderators. */
public final class RegressionPart {
  private RegressionPart() {}

  /**
   * Works it out.
   *
   * @param warnings takes what a reader must know
   */
  public static <D extends StudyData> FittedRows of(
      Synthesis<D> synthesis, AskedRegression asked, List<Result.Warning> warnings) {
    if (synthesis.plan().model() instanceof ExactModel exact) {
      return ExactRegressionPart.of(
          ModeratedStudies.of(synthesis, asked, warnings), exact, warnings);
    }
    ModeratorQuestion<D> question = ModeratorQuestion.of(synthesis, asked, warnings);
    ModeratorPredictions predictions =
        ModeratorPredictions.of(
            asked.predictions(), question.design(), question.studies().values());
    Regression regression = question.fit();
    if (synthesis.pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(synthesis.studies()));
    } else {
      regression.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    }
    return new FittedRows(
        new PooledResult(
            rows(
                synthesis,
                question.design(),
                regression.fit().map(Regression.Fit::weights).orElse(List.of())),
            Optional.empty(),
            OptionalDouble.empty(),
            regression.heterogeneity().equals(Heterogeneity.UNKNOWN)
                ? Optional.empty()
                : Optional.of(Summaries.heterogeneity(regression.heterogeneity())),
            top(regression)),
        regression
            .fit()
            .map(
                fit ->
                    new RegressionTelling<>(question, fit, warnings)
                        .told(regression.heterogeneity(), predictions)));
  }

  private static Optional<Result.Fit> top(Regression regression) {
    return regression
        .likelihood()
        .map(one -> new Result.Fit(one.logLikelihood(), one.restricted(), one.converged()));
  }

  /**
   * The rows with shares of the weights.
   *
   * @param weights of the studies that enter; empty if there are none
   */
  static <D extends StudyData> List<Result.Study> rows(
      Synthesis<D> synthesis, ModeratorDesign design, List<Double> weights) {
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
        synthesis.plan().level());
  }
}
