package gapwise.analysis.moderators;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.ExactModel;
import gapwise.analysis.pooling.PooledResult;
import gapwise.analysis.pooling.Refit;
import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.pooling.Summaries;
import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.likelihood.CountRegression;
import gapwise.synthesis.likelihood.CountRegressionFit;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The rows, and counts explained by moderators by their own likelihood. Q, I squared and R squared
 * are sums of weighted effects, of which there are none here, and are left out.
 */
final class ExactRegressionPart<D extends StudyData> {
  /**
   * Up to so many studies the test by chi-squared rejects more than 7 of 100 true hypotheses at 5
   * %: our simulation, docs/methods/error-rates.md.
   */
  private static final int FEW_FOR_CHI_SQUARED = 10;

  private final ModeratedStudies<D> studies;
  private final ExactModel model;
  private final List<D> data;
  private final DesignMatrix design;
  private final List<Result.Warning> warnings;

  private ExactRegressionPart(
      ModeratedStudies<D> studies, ExactModel model, List<Result.Warning> warnings) {
    this.studies = studies;
    this.model = model;
    this.data = studies.data();
    this.design = studies.design().design();
    this.warnings = warnings;
  }

  static <D extends StudyData> FittedRows of(
      ModeratedStudies<D> studies, ExactModel model, List<Result.Warning> warnings) {
    return new ExactRegressionPart<>(studies, model, warnings).fitted();
  }

  private FittedRows fitted() {
    ModeratorPredictions predictions =
        ModeratorPredictions.of(studies.asked().predictions(), studies.design(), studies.values());
    if (studies.synthesis().pooler().size() == 0) {
      warnings.add(StudyWarnings.nothingLeft(studies.synthesis().studies()));
      return without();
    }
    CountRegression regression = model.likelihood().regression(data, design, model.limits());
    if (!(regression instanceof CountRegressionFit fit)) {
      warnings.add(Result.Warning.of(((CountRegression.NotFitted) regression).why()));
      return without();
    }
    fit.warnings().stream().map(ExactRegressionPart::warning).forEach(warnings::add);
    if (!model.limits().studentT() && fit.studies() <= FEW_FOR_CHI_SQUARED) {
      warnings.add(
          Result.Warning.of(
              "error-rate-not-held",
              say("analysis.normal-test-of-counts", Map.of("studies", fit.studies()))));
    }
    return new FittedRows(
        new PooledResult(
            RegressionPart.rows(studies.synthesis(), studies.design(), fit.shares()),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.of(Summaries.heterogeneity(Heterogeneity.ofSpread(fit.tau()))),
            Optional.of(new Result.Fit(fit.logLikelihood(), false, fit.converged()))),
        Optional.of(told(fit, predictions)));
  }

  private static Result.Warning warning(Problem one) {
    return Result.Warning.of(one);
  }

  private FittedRows without() {
    return new FittedRows(
        new PooledResult(
            RegressionPart.rows(studies.synthesis(), studies.design(), List.of()),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()),
        Optional.empty());
  }

  private RegressionResult told(CountRegressionFit fit, ModeratorPredictions predictions) {
    FittedMean expected = new FittedMean(fit::predicted, fit.tau() * fit.tau());
    return new RegressionResult(
        coefficients(fit),
        Optional.empty(),
        fit.moderatorTest().map(RegressionResult.Test::of),
        OptionalDouble.empty(),
        nonlinearity(fit),
        Optional.empty(),
        predictions.points(studies, expected),
        predictions.curves(studies, expected),
        leaveOneOut());
  }

  private static List<RegressionResult.Coefficient> coefficients(CountRegressionFit fit) {
    return fit.coefficients().stream()
        .map(one -> RegressionResult.Coefficient.of(one.term(), one.value()))
        .toList();
  }

  private Optional<List<RegressionResult.Nonlinearity>> nonlinearity(CountRegressionFit fit) {
    List<RegressionResult.Nonlinearity> tests = new ArrayList<>();
    for (Moderator one : studies.design().moderators()) {
      if (one instanceof Moderator.Curve curve) {
        List<String> bent = curve.terms().subList(1, curve.terms().size());
        tests.add(
            new RegressionResult.Nonlinearity(
                curve.column(),
                curve.spline().knots(),
                fit.test(bent).map(RegressionResult.Test::of)));
      }
    }
    return tests.isEmpty() ? Optional.empty() : Optional.of(tests);
  }

  private Optional<List<RegressionResult.Omitted>> leaveOneOut() {
    if (!studies.asked().withoutEach()) {
      return Optional.empty();
    }
    if (data.size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(data.size()));
      return Optional.empty();
    }
    List<RegressionResult.Omitted> omitted = new ArrayList<>();
    for (int i = 0; i < data.size(); i++) {
      int out = i;
      List<Integer> rest = IntStream.range(0, data.size()).filter(j -> j != out).boxed().toList();
      String label = studies.entries().get(i).label();
      CountRegression others =
          model
              .likelihood()
              .regression(rest.stream().map(data::get).toList(), design.at(rest), model.limits());
      if (others instanceof CountRegressionFit fit) {
        omitted.add(
            new RegressionResult.Omitted(
                label, Optional.of(coefficients(fit)), OptionalDouble.of(fit.tau() * fit.tau())));
      } else {
        warnings.add(
            Result.Warning.of(
                "not-without-this-study",
                say("analysis.counts-rest-on-study", Map.of("study", label)),
                label));
        omitted.add(new RegressionResult.Omitted(label, Optional.empty(), OptionalDouble.empty()));
      }
    }
    return Optional.of(omitted);
  }
}
