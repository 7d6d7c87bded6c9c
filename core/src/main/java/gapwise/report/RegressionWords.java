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
    new ModeratorWords(telling, settings).tell();
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
        more.put("values", ModeratorWords.values(at));
        telling.say("prediction.curve-at", more);
      }
    } else {
      telling.say("prediction.values", Map.of("values", ModeratorWords.values(asked)));
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
