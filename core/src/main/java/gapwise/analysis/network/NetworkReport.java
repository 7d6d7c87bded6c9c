package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.ChiSquaredTest;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.Contribution;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkHeterogeneity;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.network.Split;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A network in the form of a result. */
record NetworkReport(
    NetworkPlan plan,
    NetworkData data,
    Network network,
    Optional<NetworkPredictions> predictions,
    Optional<NetworkRegressionResult> regression) {

  NetworkResult result() {
    return NetworkResult.of(
            new NetworkShape(
                network.treatments(),
                data.studies().stream().map(NetworkStudy::treatments).toList(),
                data.participants()),
            network.pieces(),
            effects(),
            heterogeneity(network.heterogeneity()),
            network.designByTreatment(),
            plan.higherIsBetter().flatMap(higher -> network.ranking(higher, plan.draws())))
        .with(
            new NetworkResult.Parted(
                test(network.heterogeneity().q()),
                test(network.qHeterogeneity()),
                test(network.qInconsistency())),
            network.designs().stream()
                .map(
                    one ->
                        new NetworkResult.Design(
                            one.design(), one.test().q(), one.test().degreesOfFreedom()))
                .toList(),
            regression);
  }

  /** The likelihood, for the two estimators that have one and where there was one to find. */
  Optional<Result.Fit> fit() {
    String estimator =
        plan.settings().estimator().map(one -> one.name()).orElse("dersimonian-laird");
    boolean restricted = estimator.equals("restricted-maximum-likelihood");
    if (estimator.equals("dersimonian-laird")) {
      return Optional.empty();
    }
    return network
        .heterogeneity()
        .tauSquared()
        .map(top -> new Result.Fit(network.logLikelihood(restricted), restricted, top.converged()));
  }

  private List<NetworkResult.Effect> effects() {
    return new NetworkEffects(
            network.treatments(), plan.settings().level(), data.shown(), predictions)
        .of(
            new NetworkEffects.Source() {
              @Override
              public Optional<NetworkEffects.Compared> compared(int one, int other) {
                return network.comparison(one, other).map(found -> told(found, one, other));
              }

              @Override
              public Optional<List<Contribution>> contributions(int one, int other) {
                return network.contributions(one, other);
              }
            });
  }

  private NetworkEffects.Compared told(Comparison found, int one, int other) {
    return new NetworkEffects.Compared(
        found,
        found.interval(plan.settings().level()),
        network.split(one, other).map(NetworkReport::ways));
  }

  private static NetworkEffects.Ways ways(Split split) {
    return new NetworkEffects.Ways(
        split.direct(),
        split.indirect(),
        split.difference(),
        split.difference().pValue(),
        split.sides() ? Optional.of("side-splitting") : Optional.empty());
  }

  private static NetworkResult.Test test(ChiSquaredTest test) {
    return new NetworkResult.Test(test.q(), test.degreesOfFreedom(), test.pValue());
  }

  static Result.Heterogeneity heterogeneity(NetworkHeterogeneity h) {
    return new Result.Heterogeneity(
        OptionalDouble.of(h.q().q()),
        OptionalInt.of(h.q().degreesOfFreedom()),
        h.q().pValue(),
        number(h.tauSquared().map(TauSquared.Estimate::value)),
        number(h.tauSquared().map(one -> Math.sqrt(one.value()))),
        number(h.interval().map(Interval::lower)),
        number(h.interval().map(Interval::upper)),
        percent(h.iSquared()),
        percent(h.iSquaredFromQ()),
        h.hSquared(),
        h.hSquaredFromQ());
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent() ? OptionalDouble.of(100 * share.getAsDouble()) : share;
  }
}
