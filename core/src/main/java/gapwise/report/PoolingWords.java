package gapwise.report;

import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.synthesis.likelihood.CountRegression;
import java.util.Map;
import java.util.Optional;

/** The model that pooled the rows of a synthesis, its estimator and its intervals. */
final class PoolingWords {
  private final Telling telling;
  private final Settings settings;
  private final Result result;
  private final SynthesisResult made;
  private final boolean moderated;

  PoolingWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
    this.made = SynthesisResult.of(result);
    this.moderated = settings.has("moderators");
  }

  /**
   * All of it.
   *
   * @param analysed rows that entered
   */
  void tell(int analysed) {
    boolean bayesian = settings.is("model", "bayesian");
    if (!moderated && !bayesian && analysed <= 1) {
      if (analysed == 1) {
        telling.say("single.one", percent());
      }
      telling.say(exactStudies() ? "studies-limits.exact" : "studies-limits", percent());
      return;
    }
    switch (settings.word("model")) {
      case "exact-likelihood" -> exact();
      case "three-level" -> threeLevel();
      case "bayesian" -> new BayesianWords(telling, settings, made.bayesian()).tell();
      case "common-effect" -> common();
      default -> random();
    }
    if (!bayesian) {
      intervals();
    }
    telling.say(exactStudies() ? "studies-limits.exact" : "studies-limits", percent());
    average();
  }

  private Map<String, String> percent() {
    return Map.of("percent", settings.percent());
  }

  /** Whether single rows have exact intervals: single groups with counts. */
  private boolean exactStudies() {
    return settings.is("measure", "proportion") || settings.is("measure", "incidence-rate");
  }

  private void random() {
    telling.say(moderated ? "model.regression.random-effects" : "model.random-effects");
    telling.say(moderated ? "estimator.residual" : "estimator", Map.of("estimator", estimator()));
  }

  private String estimator() {
    return telling.phrase("estimate." + settings.word("betweenStudyVariance"));
  }

  private void common() {
    String pooling = settings.word("pooling");
    if (pooling.equals("mantel-haenszel")) {
      boolean odds = settings.is("measure", "odds-ratio");
      telling.say("model.mantel-haenszel" + (odds ? ".odds-ratio" : ""));
    } else if (pooling.equals("peto")) {
      telling.say("model.peto");
    } else {
      telling.say(moderated ? "model.regression.common-effect" : "model.common-effect");
    }
  }

  private void exact() {
    exactLikelihood(telling, settings);
    telling.say(ExactModels.isBetaBinomial(settings.plan()) ? "exact.fit.beta" : "exact.fit");
    points(telling, settings);
    boolean refined =
        result.warnings().stream().anyMatch(one -> one.code().equals("quadrature-refined"));
    if (refined) {
      telling.say("exact.refined");
    }
  }

  /** Which likelihood counts have. */
  static void exactLikelihood(Telling telling, Settings settings) {
    String measure = settings.word("measure");
    boolean two = measure.equals("odds-ratio") || measure.equals("incidence-rate-ratio");
    boolean beta = settings.is("likelihood", "beta-binomial");
    telling.say("exact." + measure + (two || beta ? "." + settings.word("likelihood") : ""));
    if (two && settings.is("likelihood", "unconditional")) {
      telling.say("arm-spread." + settings.word("armSpread"));
    }
  }

  /** How the integrals of a likelihood were found. */
  static void points(Telling telling, Settings settings) {
    if (settings.is("likelihood", "beta-binomial")) {
      return;
    }
    if (settings.is("quadraturePoints", "1")) {
      telling.say("exact.laplace");
    } else if (settings.has("moderators")
        && settings.part("quadraturePoints").asInt() >= CountRegression.FEWEST_FOR_LATTICE) {
      telling.say("exact.lattice");
    } else {
      telling.say("exact.points", Map.of("points", settings.number("quadraturePoints")));
    }
  }

  private void threeLevel() {
    telling.say("three-level", Map.of("cluster", settings.word("cluster")));
    telling.say("three-level.estimator", Map.of("estimator", estimator()));
    if (made.threeLevel().isPresent()) {
      telling.say("three-level.shares");
    }
    if (made.threeLevel().filter(one -> one.withinVarianceUpper().isPresent()).isPresent()) {
      telling.say("three-level.limits", percent());
    }
    boolean notApart =
        result.warnings().stream().anyMatch(one -> one.code().equals("variances-not-apart"));
    if (notApart && made.threeLevel().isEmpty()) {
      telling.say("three-level.not-apart");
    }
  }

  private void intervals() {
    if (moderated) {
      // Coefficients have limits of their own, told with the moderators.
      if (settings.is("model", "random-effects") && made.heterogeneity().isPresent()) {
        spread(made.heterogeneity().get());
      }
      return;
    }
    telling.say(
        "interval",
        Map.of(
            "percent",
            settings.percent(),
            "interval",
            telling.phrase("limits." + settings.word("interval"))));
    predictionInterval();
    made.heterogeneity().ifPresent(this::spread);
  }

  private void predictionInterval() {
    boolean overall = made.summary().filter(PoolingWords::predicted).isPresent();
    boolean ofGroups =
        made.listOfGroups().stream()
            .anyMatch(group -> group.summary().filter(PoolingWords::predicted).isPresent());
    boolean places = made.places().isPresent();
    if (!settings.has("predictionInterval") || !(overall || ofGroups || places)) {
      return;
    }
    if (settings.is("predictionInterval", "fitted-beta")) {
      telling.say("prediction.fitted-beta", percent());
      return;
    }
    if (settings.is("model", "three-level")) {
      telling.say("cluster-prediction." + settings.word("predictionInterval"), percent());
      return;
    }
    if (settings.is("predictionInterval", "unknown-spread")) {
      telling.say("prediction.unknown-spread." + settings.word("model"), percent());
      return;
    }
    telling.say(
        "prediction",
        Map.of(
            "percent",
            settings.percent(),
            "interval",
            telling.phrase("predict." + settings.word("predictionInterval"))));
    if (settings.is("model", "random-effects")) {
      telling.say("prediction-error." + settings.word("predictionStandardError"));
    }
  }

  private static boolean predicted(Result.Summary summary) {
    return summary.predictionLower().isPresent();
  }

  private void spread(Result.Heterogeneity found) {
    if (found.tauSquaredLower().isPresent() && settings.is("model", "random-effects")) {
      telling.say("tau-interval." + settings.word("tauSquaredInterval"));
    }
    if (found.q().isPresent() && found.degreesOfFreedom().isPresent()) {
      boolean clusters = settings.is("model", "three-level");
      String spread = clusters ? "heterogeneity.clusters" : "heterogeneity.random";
      telling.say(found.tauSquared().isPresent() ? spread : "heterogeneity.q");
    }
  }

  private void average() {
    Optional<Result.Summary> summary = made.summary();
    boolean told = summary.filter(one -> one.shown().average().isPresent()).isPresent();
    // The share that a beta-binomial likelihood gives is that mean itself.
    boolean apart = !ExactModels.isBetaBinomial(settings.plan());
    if (told && apart && !settings.is("model", "bayesian")) {
      telling.say("average");
    }
  }
}
