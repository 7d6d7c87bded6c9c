package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.network.DesignByTreatment;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.exact.CountedStudy;
import gapwise.synthesis.network.exact.ExactComparison;
import gapwise.synthesis.network.exact.ExactNetwork;
import gapwise.synthesis.network.exact.ExactSettings;
import gapwise.synthesis.network.exact.ExactSplit;
import java.util.ArrayList;
import java.util.Comparator;
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
  private final List<NetworkResult.Effect> effects = new ArrayList<>();
  private boolean profiled = true;

  private ExactNetworkReport(NetworkPlan plan, NetworkData data, ExactNetwork network) {
    this.plan = plan;
    this.data = data;
    this.network = network;
    this.predictions = network.predictions();
    this.interactions = network.designByTreatment();
    this.tauSquaredInterval = network.tauSquaredInterval();
    compare();
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
    List<String> treatments = network.treatments();
    NetworkShape shape =
        new NetworkShape(
            treatments,
            data.counted().stream().map(CountedStudy::treatments).toList(),
            data.participants());
    return new NetworkResult(
        treatments,
        treatments.get(0),
        network.pieces(),
        effects,
        heterogeneity(),
        Optional.empty(),
        interactions.map(NetworkReport::interactions),
        List.of(),
        plan.higherIsBetter()
            .flatMap(higher -> network.ranking(higher, plan.draws()))
            .map(NetworkReport::ranking),
        shape.nodes(),
        shape.comparisons(),
        Optional.empty());
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

  /** Every ordered pair, each fitted once. */
  private void compare() {
    int size = network.treatments().size();
    for (int i = 0; i < size; i++) {
      for (int j = i + 1; j < size; j++) {
        Optional<ExactComparison> comparison = network.comparison(i, j);
        if (comparison.isPresent()) {
          Optional<ExactSplit> split = network.split(i, j);
          effects.add(effect(i, j, comparison.get(), split));
          effects.add(effect(j, i, comparison.get().reversed(), split.map(ExactSplit::reversed)));
          profiled &= comparison.get().profiled();
        }
      }
    }
    List<String> order = network.treatments();
    effects.sort(
        Comparator.comparingInt((NetworkResult.Effect one) -> order.indexOf(one.treatment()))
            .thenComparingInt(one -> order.indexOf(one.against())));
  }

  private NetworkResult.Effect effect(
      int one, int other, ExactComparison comparison, Optional<ExactSplit> split) {
    BackTransform back = data.shown();
    double level = plan.settings().level();
    Interval interval = comparison.interval();
    return new NetworkResult.Effect(
        network.treatments().get(one),
        network.treatments().get(other),
        comparison.estimate(),
        comparison.standardError(),
        interval.lower(),
        interval.upper(),
        new Result.Estimate(
            back.apply(comparison.estimate()),
            back.apply(interval.lower()),
            back.apply(interval.upper())),
        predictions.map(further -> NetworkReport.prediction(further.of(one, other), back)),
        split.map(both -> NetworkReport.part(both.direct(), level, back)),
        split.map(both -> NetworkReport.part(both.indirect(), level, back)),
        split.map(
            both ->
                new NetworkResult.Disagreement(
                    both.difference().estimate(),
                    both.difference().standardError(),
                    both.pValue(),
                    Optional.of("likelihood-ratio"))),
        Optional.empty());
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
