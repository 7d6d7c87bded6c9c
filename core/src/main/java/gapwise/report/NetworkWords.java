package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.network.NetworkAnswer;
import gapwise.analysis.network.NetworkRegressionResult;
import gapwise.analysis.network.NetworkResult;
import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Treatments compared through a network of studies. */
final class NetworkWords {
  private static final String MOMENTS = "dersimonian-laird";

  private final Telling telling;
  private final Settings settings;
  private final Optional<NetworkResult> made;
  private final List<Result.Warning> warnings;

  NetworkWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.warnings = result.warnings();
    this.made = result.part(NetworkAnswer.class).flatMap(NetworkAnswer::network);
  }

  void tell() {
    if (ExactModels.isNetwork(settings.plan())) {
      new ExactNetworkWords(telling, settings, warnings).tell(made);
      made.ifPresent(this::ranking);
      return;
    }
    telling.say("network." + settings.word("networkEffects"));
    if (settings.is("networkEffects", "random")) {
      String word = settings.word("betweenStudyVariance");
      telling.say(
          "estimator",
          Map.of(
              "estimator",
              telling.phrase(
                  word.equals(MOMENTS) ? "network.estimate." + MOMENTS : "estimate." + word)));
    }
    if (settings.is("measure", "standardised-mean-difference")) {
      telling.say("network.standardised");
    }
    telling.say("network.interval", Map.of("percent", settings.percent()));
    if (made.isEmpty()) {
      telling.say("network.none");
    } else {
      told(made.get());
    }
  }

  /** How many treatments there are, and how they hang together. */
  static void shape(Telling telling, NetworkResult network) {
    telling.say("network.counts", Map.of("treatments", network.treatments().size()));
    if (network.pieces().size() > 1) {
      telling.say("network.pieces", Map.of("pieces", network.pieces().size()));
    }
    telling.say("network.reference", Map.of("reference", network.reference()));
  }

  private void told(NetworkResult network) {
    shape(telling, network);
    boolean random = settings.is("networkEffects", "random");
    if (network.heterogeneity().tauSquaredLower().isPresent() && random) {
      telling.say("tau-interval." + settings.word("tauSquaredInterval"));
    }
    if (random && network.heterogeneity().tauSquared().isEmpty()) {
      telling.say("network.no-spread");
    }
    List<NetworkResult.Effect> effects = network.effects();
    if (any(effects, one -> one.prediction().isPresent())) {
      telling.say(
          "network.prediction." + settings.word("predictionInterval"),
          Map.of("percent", settings.percent()));
    }
    if (any(effects, one -> one.disagreement().isPresent())) {
      telling.say("network.direct");
    }
    if (any(effects, one -> one.disagreement().flatMap(two -> two.method()).isPresent())) {
      telling.say("network.side-splitting");
    }
    if (any(effects, one -> one.contributions().isPresent())) {
      telling.say("network.contributions");
    }
    if (network.inconsistency().isPresent()) {
      telling.say("network.designs");
    }
    if (network.designByTreatment().isPresent()) {
      telling.say("network.interaction");
    }
    if (settings.has("moderators")) {
      moderator(network);
    }
    ranking(network);
  }

  private void moderator(NetworkResult network) {
    if (network.regression().isEmpty()) {
      JsonNode asked = settings.part("moderators").get(0);
      String column = asked.path("column").asText(asked.asText());
      telling.say(
          "network.moderator-none", Map.of("reference", network.reference(), "column", column));
      return;
    }
    NetworkRegressionResult regression = network.regression().get();
    String column = regression.moderator();
    telling.say(
        "network.moderator",
        Map.of(
            "reference", network.reference(), "column", column, "studies", regression.studies()));
    telling.say(
        "network.moderator-at",
        Map.of(
            "column",
            column,
            "values",
            Settings.join(
                Stream.concat(
                    Stream.of(
                        settings.part("moderators").get(0).has("centre")
                            ? Settings.number(settings.part("moderators").get(0).get("centre"))
                            : telling.phrase("network.moderator-mean")),
                    settings
                        .part("predictions")
                        .valueStream()
                        .map(one -> Settings.number(one.get(column)))))));
    telling.say(
        "network.moderator-test." + settings.word("moderatorTest"),
        Map.of("percent", settings.percent()));
  }

  private void ranking(NetworkResult network) {
    if (network.ranking().isEmpty()) {
      telling.say(settings.has("better") ? "network.no-ranking-of-pieces" : "network.no-ranking");
      return;
    }
    telling.say("network.ranking", Map.of("better", settings.word("better")));
    telling.say(
        "network.draws",
        Map.of("draws", settings.number("rankingDraws"), "seed", settings.number("seed")));
  }

  static boolean any(List<NetworkResult.Effect> effects, Predicate<NetworkResult.Effect> what) {
    return effects.stream().anyMatch(what);
  }
}
