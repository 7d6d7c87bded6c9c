package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.moderators.RegressionResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.synthesis.likelihood.CountRegressionFit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A regression on moderators. */
final class RegressionWords {
  private final Telling telling;
  private final Settings settings;
  private final Result result;
  private final Optional<RegressionResult> made;

  RegressionWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
    this.made = SynthesisResult.of(result).regression();
  }

  void tell() {
    settings.part("moderators").forEach(this::moderator);
    if (made.isEmpty()) {
      telling.say("moderator.not-fitted");
      return;
    }
    if (settings.is("model", "exact-likelihood")) {
      byLikelihood();
    } else {
      // A common effect has the normal test, whatever is asked.
      boolean common = settings.is("model", "common-effect");
      telling.say("moderator-test." + (common ? "normal" : settings.word("moderatorTest")));
      telling.say("moderator-limits", Map.of("percent", settings.percent()));
    }
    if (made.get().rSquaredPercent().isPresent()) {
      telling.say("r-squared");
    }
    settings.part("predictions").forEach(this::prediction);
    predictionLimits(made.get());
    permutation(made.get());
  }

  private void byLikelihood() {
    telling.say("moderator-test.of-likelihood." + settings.word("moderatorTest"));
    boolean partly =
        result.warnings().stream().anyMatch(one -> one.code().equals("profile-without-limit"));
    boolean errors = result.data().studies() > CountRegressionFit.MOST_PROFILED;
    telling.say(
        partly
            ? "moderator-limits.profile-in-part"
            : errors ? "moderator-limits.errors" : "moderator-limits.profile",
        Map.of("percent", settings.percent()));
  }

  private void moderator(JsonNode asked) {
    if (asked.isTextual()) {
      telling.say("moderator.plain", Map.of("column", asked.asText()));
    } else if (asked.has("product")) {
      telling.say(
          "moderator.product",
          Map.of(
              "first", asked.get("product").get(0).asText(),
              "second", asked.get("product").get(1).asText()));
    } else {
      column(asked, asked.get("column").asText());
    }
  }

  private void column(JsonNode asked, String column) {
    if (asked.has("reference")) {
      telling.say(
          "moderator.category", Map.of("column", column, "level", asked.get("reference").asText()));
    } else if (asked.has("centre")) {
      telling.say(
          "moderator.centred",
          Map.of("column", column, "centre", Settings.number(asked.get("centre"))));
    } else if (asked.path("spline").has("knots")) {
      telling.say(
          "moderator.spline-knots",
          Map.of("column", column, "list", Settings.numbers(asked.get("spline").get("knots"))));
    } else {
      telling.say(
          "moderator.spline-count",
          Map.of("column", column, "knots", asked.path("spline").path("count").asText()));
    }
  }

  private void prediction(JsonNode asked) {
    if (asked.has("from") && asked.has("to")) {
      JsonNode at = asked.path("at");
      Map<String, String> curve =
          Map.of(
              "points", asked.get("points").asText(),
              "column", asked.get("column").asText(),
              "from", Settings.number(asked.get("from")),
              "to", Settings.number(asked.get("to")));
      if (at.isEmpty()) {
        telling.say("prediction.curve", curve);
      } else {
        Map<String, String> more = new HashMap<>(curve);
        more.put("values", values(at));
        telling.say("prediction.curve-at", more);
      }
    } else {
      telling.say("prediction.values", Map.of("values", values(asked)));
    }
  }

  /** Limits for a further study at a prediction are made as those about a mean. */
  private void predictionLimits(RegressionResult regression) {
    boolean values =
        regression.predictions().stream()
            .flatMap(List::stream)
            .anyMatch(one -> one.predictionLower().isPresent());
    boolean curves =
        regression.curves().stream()
            .flatMap(List::stream)
            .flatMap(curve -> curve.points().stream())
            .anyMatch(one -> one.predictionLower().isPresent());
    if ((values || curves) && settings.has("predictionInterval")) {
      telling.say(
          "prediction-limits",
          Map.of(
              "interval",
              telling.phrase("predict-residual." + settings.word("predictionInterval"))));
      if (!settings.is("model", "exact-likelihood")) {
        telling.say("prediction-error." + settings.word("predictionStandardError"));
      }
    }
  }

  private static String values(JsonNode values) {
    return Settings.join(
        values.properties().stream()
            .map(
                one ->
                    "\""
                        + one.getKey()
                        + "\" of "
                        + (one.getValue().isNumber()
                            ? Settings.number(one.getValue())
                            : one.getValue().asText())));
  }

  private void permutation(RegressionResult regression) {
    JsonNode asked = settings.part("permutationTest");
    if (!asked.isObject()) {
      return;
    }
    Map<String, String> places =
        Map.of(
            "permutations", asked.get("permutations").asText(), "seed", asked.get("seed").asText());
    if (regression.permutationTest().isEmpty()) {
      telling.say("permutation.none", places);
    } else if (regression.permutationTest().get().exact()) {
      telling.say("permutation.exact");
    } else {
      telling.say("permutation.drawn", places);
    }
  }
}
