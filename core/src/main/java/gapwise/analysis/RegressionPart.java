package gapwise.analysis;

import gapwise.effect.StudyData;
import gapwise.synthesis.pooling.Heterogeneity;
import gapwise.synthesis.regression.Regression;
import java.util.List;
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
    Regression regression = question.fit();
    if (synthesis.pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(synthesis.studies()));
    } else {
      warnings.addAll(StudyWarnings.of(regression.warnings()));
    }
    result
        .studies(rows(synthesis, question.design(), regression))
        .fit(
            regression
                .likelihood()
                .map(
                    top -> new Result.Fit(top.logLikelihood(), top.restricted(), top.converged())));
    if (!regression.heterogeneity().equals(Heterogeneity.UNKNOWN)) {
      result.heterogeneity(Summaries.heterogeneity(regression.heterogeneity()));
    }
    regression
        .fit()
        .ifPresent(fit -> result.regression(result(question, regression, fit, warnings)));
  }

  private static <D extends StudyData> List<Result.Study> rows(
      Synthesis<D> synthesis, ModeratorDesign design, Regression regression) {
    List<Double> weights = regression.fit().map(Regression.Fit::weights).orElse(List.of());
    double sum = weights.stream().mapToDouble(Double::doubleValue).sum();
    return StudyTable.rows(
        synthesis.studies(),
        synthesis.measure(),
        pooled -> {
          int row = design.places().indexOf(pooled);
          return row < 0 || weights.isEmpty()
              ? OptionalDouble.empty()
              : OptionalDouble.of(weights.get(row) / sum);
        },
        synthesis.plan().settings().level());
  }

  private static <D extends StudyData> RegressionResult result(
      ModeratorQuestion<D> question,
      Regression regression,
      Regression.Fit fit,
      List<Result.Warning> warnings) {
    Heterogeneity left = regression.heterogeneity();
    return new RegressionResult(
        fit.coefficients().stream()
            .map(one -> RegressionResult.Coefficient.of(one.term(), one.value()))
            .toList(),
        new RegressionResult.ResidualQ(left.q(), left.degreesOfFreedom(), left.pValue()),
        fit.moderatorTest().map(RegressionResult.Test::of),
        fit.rSquared().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(100 * fit.rSquared().getAsDouble()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
