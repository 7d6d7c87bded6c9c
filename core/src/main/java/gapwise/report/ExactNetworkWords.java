package gapwise.report;

import gapwise.analysis.network.NetworkResult;
import gapwise.analysis.result.Result;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Treatments compared through a network of studies by the exact likelihood of their counts. */
final class ExactNetworkWords {
  private final Telling telling;
  private final Settings settings;
  private final List<Result.Warning> warnings;

  ExactNetworkWords(Telling telling, Settings settings, List<Result.Warning> warnings) {
    this.telling = telling;
    this.settings = settings;
    this.warnings = warnings;
  }

  /** All but the ranking. */
  void tell(Optional<NetworkResult> made) {
    boolean random = settings.is("networkEffects", "random");
    telling.say(random ? "network.exact.random" : "network.exact.common");
    if (made.isEmpty()) {
      telling.say("network.none");
      return;
    }
    NetworkResult network = made.get();
    boolean spread = network.heterogeneity().tauSquared().isPresent();
    telling.say(spread ? "network.exact.fit" : "network.exact.fit-common");
    boolean inPart = warnings.stream().anyMatch(one -> one.code().equals("profile-without-limit"));
    telling.say(
        inPart ? "network.exact.interval-in-part" : "network.exact.interval",
        Map.of("percent", settings.percent()));
    NetworkWords.shape(telling, network);
    if (network.heterogeneity().tauSquaredLower().isPresent()) {
      telling.say("tau-interval.profile-likelihood");
    }
    if (random && !spread) {
      telling.say("network.no-spread");
    }
    if (NetworkWords.any(network.effects(), one -> one.prediction().isPresent())) {
      telling.say("network.exact.prediction", Map.of("percent", settings.percent()));
    }
    if (NetworkWords.any(network.effects(), one -> one.disagreement().isPresent())) {
      telling.say("network.exact.direct");
    }
    if (network.designByTreatment().isPresent()) {
      telling.say("network.exact.interaction");
    }
  }
}
