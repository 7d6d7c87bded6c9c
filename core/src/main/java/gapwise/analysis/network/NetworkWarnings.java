package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.Network;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a reader of a network must know, in words. */
final class NetworkWarnings {
  /**
   * A test of inconsistency has little power, so it is heeded below 0.10 rather than 0.05: common
   * practice, no source.
   */
  private static final double CONTRADICTION = 0.10;

  private NetworkWarnings() {}

  static void add(
      NetworkPlan plan, NetworkData data, Network network, List<Result.Warning> warnings) {
    reference(plan, network.treatments(), warnings);
    connection(network.pieces(), warnings);
    contradiction(network, warnings);
    if (data.studies().size() == 1) {
      warnings.add(Result.Warning.of("single-study", say("analysis.network-of-one-study")));
    } else if (plan.settings().estimator().isPresent()) {
      tauSquared(network, warnings);
    }
    if (network.pieces().size() == 1
        && network.treatments().size() > 2
        && network.qInconsistency().degreesOfFreedom() == 0) {
      warnings.add(Result.Warning.of("no-closed-loop", say("analysis.no-closed-loop")));
    }
    ranks(plan, network.pieces(), warnings);
  }

  /** That the treatment asked for first is not there. */
  static void reference(NetworkPlan plan, List<String> treatments, List<Result.Warning> warnings) {
    plan.reference()
        .filter(reference -> !treatments.contains(reference))
        .ifPresent(
            reference ->
                warnings.add(
                    Result.Warning.of(
                        "reference-left-out",
                        say(
                            "analysis.reference-left-out",
                            Map.of("reference", reference, "instead", treatments.get(0))))));
  }

  /** What to keep in mind of ranks, or why there are none. */
  static void ranks(NetworkPlan plan, List<List<String>> pieces, List<Result.Warning> warnings) {
    if (plan.higherIsBetter().isEmpty()) {
      warnings.add(Result.Warning.of("no-ranking", say("analysis.better-not-given")));
    } else if (pieces.size() == 1) {
      warnings.add(Result.Warning.of("ranks-hide-size-and-certainty", say("analysis.ranks-hide")));
    }
  }

  private static void contradiction(Network network, List<Result.Warning> warnings) {
    double byCommonEffect = network.qInconsistency().pValue().orElse(1);
    double byRandomEffects =
        network.designByTreatment().map(all -> all.test().pValue().orElse(1)).orElse(1.0);
    contradiction(Math.min(byCommonEffect, byRandomEffects), warnings);
  }

  /** That designs differ more than by chance, by the least p value of the tests made. */
  static void contradiction(double least, List<Result.Warning> warnings) {
    if (least < CONTRADICTION) {
      warnings.add(
          Result.Warning.of(
              "loops-contradict",
              say(
                  "analysis.loops-contradict",
                  Map.of(
                      "p",
                      least < 0.0001
                          ? "below 0.0001"
                          : String.format(Locale.ROOT, "%.2g", least)))));
    }
  }

  /** That limits of a comparison come to one value; empty if none do. */
  static Optional<Result.Warning> withoutWidth(NetworkResult network) {
    return network.effects().stream()
        .filter(one -> !(one.lower() < one.upper()))
        .findFirst()
        .map(
            one ->
                Result.Warning.of(
                    "zero-width-interval",
                    say(
                        "analysis.comparison-without-width",
                        Map.of("treatment", one.treatment(), "against", one.against()))));
  }

  /** That not all treatments are joined. */
  static void connection(List<List<String>> pieces, List<Result.Warning> warnings) {
    if (pieces.size() > 1) {
      warnings.add(
          Result.Warning.of(
              "disconnected-network",
              say(
                  "analysis.disconnected-network",
                  Map.of(
                      "pieces",
                      pieces.stream()
                          .map(piece -> String.join(", ", piece))
                          .collect(Collectors.joining(" | "))))));
    }
  }

  private static void tauSquared(Network network, List<Result.Warning> warnings) {
    Optional<TauSquared.Estimate> estimate = network.heterogeneity().tauSquared();
    if (estimate.isEmpty()) {
      warnings.add(Result.Warning.of("too-few-studies", say("analysis.no-comparison-twice")));
      return;
    }
    if (estimate.get().value() == 0) {
      warnings.add(
          Result.Warning.of("between-study-variance-at-zero", say("analysis.variance-at-zero")));
    }
    if (!estimate.get().converged()) {
      warnings.add(Result.Warning.of("did-not-converge", say("analysis.variance-not-settled")));
    }
  }
}
