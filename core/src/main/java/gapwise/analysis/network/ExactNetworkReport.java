package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.DesignByTreatment;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.exact.CountedStudy;
import gapwise.synthesis.network.exact.ExactNetwork;
import gapwise.synthesis.network.exact.ExactSettings;
import gapwise.synthesis.network.exact.ExactSplit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A network of counts by their exact likelihood in the form of a result. */
final class ExactNetworkReport {
  private final NetworkPlan plan;
  private final NetworkData data;
  private final ExactNetwork network;
  private final Optional<NetworkPredictions> predictions;
  private final Optional<DesignByTreatment> interactions;
  private final Optional<Interval> tauSquaredInterval;
  private final List<NetworkResult.Effect> effects;
  private boolean profiled = true;

  private ExactNetworkReport(NetworkPlan plan, NetworkData data, ExactNetwork network) {
    this.plan = plan;
    this.data = data;
    this.network = network;
    this.predictions = network.predictions();
    this.interactions = network.designByTreatment();
    this.tauSquaredInterval = network.tauSquaredInterval();
    this.effects =
        new NetworkEffects(network.treatments(), plan.settings().level(), data.shown(), predictions)
            .of(this::compared);
  }

  /** Fits the network and adds what a reader must know; empty where there is no fit. */
  static Optional<ExactNetworkReport> of(
      NetworkPlan plan, NetworkData data, List<Result.Warning> warnings) {
    ExactNetwork.Fitted fitted =
        ExactNetwork.of(
            data.counted(),
            plan.reference().orElse(""),
            new ExactSettings(plan.settings().estimator().isPresent(), plan.settings().level()));
    if (fitted instanceof ExactNetwork.Fitted.Not not) {
      warnings.add(Result.Warning.of(not.why()));
      return Optional.empty();
    }
    ExactNetwork network = ((ExactNetwork.Fitted.Done) fitted).network();
    ExactNetworkReport report = new ExactNetworkReport(plan, data, network);
    report.warn(warnings);
    return Optional.of(report);
  }

  /** The top of the likelihood. */
  Result.Fit fit() {
    return new Result.Fit(network.logLikelihood(), false, network.converged());
  }

  NetworkResult result() {
    return NetworkResult.of(
        new NetworkShape(
            network.treatments(),
            data.counted().stream().map(CountedStudy::treatments).toList(),
            data.participants()),
        network.pieces(),
        effects,
        heterogeneity(),
        interactions,
        plan.higherIsBetter().flatMap(higher -> network.ranking(higher, plan.draws())));
  }

  private Result.Heterogeneity heterogeneity() {
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble tau = network.tau();
    return new Result.Heterogeneity(
        none,
        OptionalInt.empty(),
        none,
        tau.isPresent() ? OptionalDouble.of(tau.getAsDouble() * tau.getAsDouble()) : none,
        tau,
        tauSquaredInterval.map(one -> OptionalDouble.of(one.lower())).orElse(none),
        tauSquaredInterval.map(one -> OptionalDouble.of(one.upper())).orElse(none),
        none,
        none,
        none,
        none);
  }

  private Optional<NetworkEffects.Compared> compared(int one, int other) {
    return network
        .comparison(one, other)
        .map(
            found -> {
              profiled &= found.profiled();
              return new NetworkEffects.Compared(
                  new Comparison(found.estimate(), found.standardError()),
                  found.interval(),
                  network.split(one, other).map(ExactNetworkReport::ways));
            });
  }

  private static NetworkEffects.Ways ways(ExactSplit split) {
    return new NetworkEffects.Ways(
        split.direct(),
        split.indirect(),
        split.difference(),
        split.pValue(),
        Optional.of("likelihood-ratio"));
  }

  private void warn(List<Result.Warning> warnings) {
    NetworkWarnings.reference(plan, network.treatments(), warnings);
    NetworkWarnings.connection(network.pieces(), warnings);
    interactions.ifPresent(
        all -> NetworkWarnings.contradiction(all.test().pValue().orElse(1), warnings));
    if (data.counted().size() == 1) {
      warnings.add(Result.Warning.of("single-study", say("analysis.exact-network-of-one-study")));
    } else if (plan.settings().estimator().isPresent()) {
      spread(warnings);
    }
    if (!network.converged()) {
      warnings.add(
          Result.Warning.of("did-not-converge", say("analysis.exact-network-not-settled")));
    }
    if (!profiled) {
      warnings.add(
          Result.Warning.of("profile-without-limit", say("analysis.exact-network-by-information")));
    }
    if (network.pieces().size() == 1
        && network.treatments().size() > 2
        && interactions.isEmpty()
        && effects.stream().noneMatch(one -> one.disagreement().isPresent())) {
      warnings.add(Result.Warning.of("no-closed-loop", say("analysis.exact-network-no-loop")));
    }
    NetworkWarnings.ranks(plan, network.pieces(), warnings);
  }

  private void spread(List<Result.Warning> warnings) {
    OptionalDouble tau = network.tau();
    if (tau.isEmpty()) {
      warnings.add(Result.Warning.of("too-few-studies", say("analysis.no-comparison-twice")));
      return;
    }
    if (tau.getAsDouble() == 0) {
      warnings.add(
          Result.Warning.of("between-study-variance-at-zero", say("analysis.variance-at-zero")));
    }
    if (predictions.isEmpty()) {
      warnings.add(
          Result.Warning.of(
              "prediction-left-out",
              network.tellsFurtherStudies()
                  ? say("analysis.exact-network-further-too-long")
                  : say("analysis.exact-network-further-too-few")));
    }
  }
}
