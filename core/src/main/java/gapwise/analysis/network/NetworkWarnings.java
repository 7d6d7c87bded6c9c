package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.Network;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a reader of a network must know, in words. */
final class NetworkWarnings {
  private NetworkWarnings() {}

  static void add(
      NetworkPlan plan, NetworkData data, Network network, List<Result.Warning> warnings) {
    plan.reference()
        .filter(reference -> !network.treatments().contains(reference))
        .ifPresent(
            reference ->
                warnings.add(
                    Result.Warning.of(
                        "reference-left-out",
                        "no study of '"
                            + reference
                            + "' can enter, so '"
                            + network.treatments().get(0)
                            + "' stands first instead")));
    connection(network, warnings);
    if (data.studies().size() == 1) {
      warnings.add(
          Result.Warning.of(
              "single-study",
              "only one study: its own comparisons with normal intervals stand here, and nothing"
                  + " can be said of differences between studies"));
    } else if (plan.settings().estimator().isPresent()) {
      tauSquared(network, warnings);
    }
    if (network.pieces().size() == 1
        && network.treatments().size() > 2
        && network.qInconsistency().degreesOfFreedom() == 0) {
      warnings.add(
          Result.Warning.of(
              "no-closed-loop",
              "no comparison is made both directly and through other treatments, so whether direct"
                  + " and indirect evidence agree cannot be seen; indirect comparisons rest on"
                  + " studies being alike in all but their treatments"));
    }
    if (network.pieces().size() == 1) {
      warnings.add(
          Result.Warning.of(
              "ranks-hide-size-and-certainty",
              "a rank says neither how large a difference is nor how sure: read the effects with"
                  + " their intervals first, and the interval of each rank beside it"));
    }
  }

  private static void connection(Network network, List<Result.Warning> warnings) {
    if (network.pieces().size() > 1) {
      warnings.add(
          Result.Warning.of(
              "disconnected-network",
              "no chain of studies joins all treatments; comparisons across these pieces and the"
                  + " ranking are left out: "
                  + network.pieces().stream()
                      .map(piece -> String.join(", ", piece))
                      .collect(Collectors.joining(" | "))));
    }
  }

  private static void tauSquared(Network network, List<Result.Warning> warnings) {
    Optional<TauSquared.Estimate> estimate = network.heterogeneity().tauSquared();
    if (estimate.isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "too-few-studies",
              "no comparison is made by two studies or two ways, so differences between studies"
                  + " cannot be estimated and the intervals leave no room for them: they are too"
                  + " narrow if studies differ"));
      return;
    }
    if (estimate.get().value() == 0) {
      warnings.add(
          Result.Warning.of(
              "between-study-variance-at-zero",
              "the variance between studies is estimated as 0; with few studies this does not show"
                  + " that their true effects agree"));
    }
    if (!estimate.get().converged()) {
      warnings.add(
          Result.Warning.of(
              "did-not-converge", "the search for the variance between studies did not settle"));
    }
  }
}
