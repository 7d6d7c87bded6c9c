package gapwise.analysis.multiverse;

import gapwise.analysis.moderators.NamedSum;
import gapwise.analysis.pooling.ExactModel;
import gapwise.effect.BackTransform;
import gapwise.effect.StudyData;
import gapwise.synthesis.likelihood.CountRegression;
import gapwise.synthesis.likelihood.CountRegressionFit;
import gapwise.synthesis.multiverse.AnalysisFinding;
import gapwise.synthesis.multiverse.Approach;
import gapwise.synthesis.multiverse.Body;
import gapwise.synthesis.multiverse.FoundApproach;
import gapwise.synthesis.multiverse.RegressionApproach;
import gapwise.synthesis.multiverse.Settings;
import gapwise.synthesis.regression.RegressionTest;
import gapwise.synthesis.regression.RobustVariance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The ways of explaining effects, or counts, by moderators that a multiverse asks for, of which one
 * sum of coefficients is told.
 *
 * @param sum what is told
 * @param clusters the cluster of each data row, empty text where none is named
 */
record ModeratedApproaches(
    MultiversePlan plan, MultiverseChoices choices, NamedSum sum, List<String> clusters) {
  ModeratedApproaches {
    clusters = List.copyOf(clusters);
  }

  /**
   * Counts of some rows.
   *
   * @param rows the places of those that can be pooled
   * @param data one for each of them
   * @param back the way to what people read
   */
  record Counted(List<Integer> rows, List<? extends StudyData> data, BackTransform back) {
    Counted {
      rows = List.copyOf(rows);
      data = List.copyOf(data);
    }
  }

  /** Effects by their variances. */
  Approach byEffects(String scale, Settings settings, Function<List<Integer>, Body> effects) {
    return new RegressionApproach(
        scale, ways(settings), rows -> explained(effects.apply(entering(rows))));
  }

  private List<Integer> entering(List<Integer> rows) {
    return rows.stream().filter(sum::enters).toList();
  }

  private RegressionApproach.Explained explained(Body body) {
    NamedSum.Of told = sum.of(body.rows());
    return new RegressionApproach.Explained(
        body.sample(),
        told.design(),
        told.factors(),
        body.rows().stream().map(clusters::get).toList(),
        back(body.back()),
        body.ifEmpty());
  }

  /** A coefficient or a difference is told on the analysis scale. */
  private BackTransform back(BackTransform ofMean) {
    return sum.isMean() ? ofMean : BackTransform.NONE;
  }

  private List<RegressionApproach.Way> ways(Settings settings) {
    List<RegressionApproach.Way> ways = new ArrayList<>();
    for (String model : plan.vary().models()) {
      Settings ofModel = choices.with(settings, MultiverseChoices.MODEL, model);
      if (model.equals("common-effect")) {
        tested(ofModel, model, Optional.empty(), ways);
      } else if (model.equals("random-effects")) {
        for (String estimator : plan.vary().estimators()) {
          tested(
              choices.with(ofModel, MultiverseChoices.ESTIMATOR, estimator),
              model,
              Optional.of(estimator),
              ways);
        }
      }
    }
    return ways;
  }

  /** Each test of a model, and each robust variance, which takes the place of a test. */
  private void tested(
      Settings settings,
      String model,
      Optional<String> estimator,
      List<RegressionApproach.Way> ways) {
    List<String> robust = choices.levels(MultiverseChoices.ROBUST_VARIANCE);
    for (String variance : robust) {
      Settings clustered = choices.with(settings, MultiverseChoices.ROBUST_VARIANCE, variance);
      boolean own = variance.isEmpty() || variance.equals(Vary.MODELS_OWN);
      List<String> tests = plan.vary().limits().testsOf(model);
      for (String test : own && !tests.isEmpty() ? tests : List.of("")) {
        ways.add(
            new RegressionApproach.Way(
                choices.with(clustered, MultiverseChoices.MODERATOR_TEST, test),
                plan.regression(estimator, test(test)),
                own
                    ? Optional.empty()
                    : Optional.of(
                        RobustVariance.Correction.valueOf(variance.toUpperCase(Locale.ROOT)))));
      }
    }
  }

  /** A robust variance and a common effect have none of their own. */
  private static RegressionTest test(String word) {
    return word.isEmpty()
        ? RegressionTest.NORMAL
        : RegressionTest.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  /** Counts by their own likelihood. */
  Approach fromCounts(MultiversePlan.FromCounts way, Function<List<Integer>, Counted> counts) {
    ExactModel model = (ExactModel) way.how().model();
    Settings settings =
        choices.with(
            choices.with(choices.none(), MultiverseChoices.MODEL, way.model()),
            MultiverseChoices.MODERATOR_TEST,
            way.interval());
    return new FoundApproach(
        way.how().scale(), settings, rows -> found(model, counts.apply(entering(rows))));
  }

  private AnalysisFinding found(ExactModel model, Counted counted) {
    if (counted.rows().isEmpty()) {
      return new AnalysisFinding.NotEstimated("no-studies");
    }
    NamedSum.Of told = sum.of(counted.rows());
    CountRegression regression =
        model.likelihood().regression(counted.data(), told.design(), model.limits());
    if (regression instanceof CountRegression.NotFitted not) {
      return new AnalysisFinding.NotEstimated(not.why().code());
    }
    CountRegressionFit fit = (CountRegressionFit) regression;
    double[] factors =
        IntStream.range(0, told.factors().size()).mapToDouble(told.factors()::get).toArray();
    AnalysisFinding found =
        AnalysisFinding.of(fit.predicted(factors).mean(), back(counted.back()), fit.studies());
    return fit.isWithoutLimit() ? new AnalysisFinding.NotEstimated("profile-without-limit") : found;
  }
}
