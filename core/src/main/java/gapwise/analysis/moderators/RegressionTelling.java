package gapwise.analysis.moderators;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.Refit;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.result.Result;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.synthesis.heterogeneity.Heterogeneity;
import gapwise.synthesis.regression.PermutationTest;
import gapwise.synthesis.regression.Regression;
import gapwise.synthesis.regression.RegressionTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A fitted regression in the form of a result, with what else the plan asks of it. */
final class RegressionTelling<D extends StudyData> {
  /** Arrangements times studies; more take longer than anyone waits at a page. */
  private static final long MOST_REARRANGED = 2_000_000;

  /**
   * Up to so many studies the normal test rejects more than 7 of 100 true hypotheses at 5 %: our
   * simulation, docs/methods/error-rates.md.
   */
  private static final int FEW_FOR_THE_NORMAL_TEST = 10;

  private final ModeratorQuestion<D> question;
  private final Regression.Fit fit;
  private final List<Result.Warning> warnings;

  /**
   * @param warnings takes why a part is not told
   */
  RegressionTelling(
      ModeratorQuestion<D> question, Regression.Fit fit, List<Result.Warning> warnings) {
    this.question = question;
    this.fit = fit;
    this.warnings = warnings;
  }

  RegressionResult told(Heterogeneity left, ModeratorPredictions predictions) {
    boolean random = question.settings().pooling().estimator().isPresent();
    int studies = question.sample().size();
    if (random
        && question.settings().test() == RegressionTest.NORMAL
        && studies <= FEW_FOR_THE_NORMAL_TEST) {
      warnings.add(
          Result.Warning.of(
              "error-rate-not-held",
              say("analysis.normal-moderator-test", Map.of("studies", studies))));
    }
    return new RegressionResult(
        coefficients(fit),
        Optional.of(
            new RegressionResult.ResidualQ(left.q(), left.degreesOfFreedom(), left.pValue())),
        fit.moderatorTest().map(RegressionResult.Test::of),
        fit.rSquared().isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(100 * fit.rSquared().getAsDouble()),
        nonlinearity(),
        permutation(),
        predictions.points(question.studies(), question.expected(fit)),
        predictions.curves(question.studies(), question.expected(fit)),
        leaveOneOut());
  }

  private static List<RegressionResult.Coefficient> coefficients(Regression.Fit fit) {
    return fit.coefficients().stream()
        .map(one -> RegressionResult.Coefficient.of(one.term(), one.value()))
        .toList();
  }

  private Optional<List<RegressionResult.Nonlinearity>> nonlinearity() {
    List<RegressionResult.Nonlinearity> tests = new ArrayList<>();
    for (Moderator one : question.design().moderators()) {
      if (one instanceof Moderator.Curve curve) {
        List<String> bent = curve.terms().subList(1, curve.terms().size());
        tests.add(
            new RegressionResult.Nonlinearity(
                curve.column(),
                curve.spline().knots(),
                Regression.test(fit, question.sample(), question.settings(), bent)
                    .map(RegressionResult.Test::of)));
      }
    }
    return tests.isEmpty() ? Optional.empty() : Optional.of(tests);
  }

  private Optional<RegressionResult.Permutation> permutation() {
    if (question.studies().asked().permutation().isEmpty()) {
      return Optional.empty();
    }
    AskedRegression.Permutation asked = question.studies().asked().permutation().get();
    int permutations = asked.permutations();
    Work.require(
        Limit.DRAWS, permutations, "permutationTest.permutations", "Some thousand tell enough.");
    if ((long) permutations * question.sample().size() > MOST_REARRANGED) {
      warnings.add(
          Result.Warning.of(
              "too-many-studies",
              say(
                  "analysis.too-many-arrangements",
                  Map.of(
                      "most",
                      String.valueOf(MOST_REARRANGED),
                      "arrangements",
                      String.valueOf(permutations),
                      "studies",
                      String.valueOf(question.sample().size())))));
      return Optional.empty();
    }
    PermutationTest test =
        PermutationTest.of(
            question.sample(), fit.design(), question.settings(), permutations, asked.seed());
    return Optional.of(
        new RegressionResult.Permutation(
            test.exact(),
            test.arrangements(),
            test.termPValues().entrySet().stream()
                .map(one -> new RegressionResult.PermutedTerm(one.getKey(), one.getValue()))
                .toList(),
            new RegressionResult.PermutedModerators(test.overallPValue())));
  }

  private Optional<List<RegressionResult.Omitted>> leaveOneOut() {
    if (!question.studies().asked().withoutEach()) {
      return Optional.empty();
    }
    if (question.sample().size() > Refit.MOST_STUDIES) {
      warnings.add(StudyWarnings.tooMany(question.sample().size()));
      return Optional.empty();
    }
    List<Optional<Regression.Fit>> fits =
        Regression.withoutEach(question.sample(), fit.design(), question.settings());
    List<RegressionResult.Omitted> omitted = new ArrayList<>();
    List<Studies.Entry<D>> entries = question.studies().entries();
    for (int i = 0; i < fits.size(); i++) {
      Optional<Regression.Fit> one = fits.get(i);
      String label = entries.get(i).label();
      if (one.isEmpty()) {
        warnings.add(
            Result.Warning.of(
                "not-without-this-study",
                say("analysis.rests-on-study", Map.of("study", label)),
                label));
      } else if (one.get().isWithoutWidth()) {
        warnings.add(
            Result.Warning.of(
                "zero-width-interval",
                say("analysis.moderators-fit-without", Map.of("study", label)),
                label));
      }
      omitted.add(
          new RegressionResult.Omitted(
              label,
              one.map(RegressionTelling::coefficients),
              one.isPresent() && question.settings().pooling().estimator().isPresent()
                  ? OptionalDouble.of(one.get().tauSquared())
                  : OptionalDouble.empty()));
    }
    return Optional.of(omitted);
  }
}
