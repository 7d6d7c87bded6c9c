package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.ChiSquaredTest;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.Contribution;
import gapwise.synthesis.network.DesignByTreatment;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkHeterogeneity;
import gapwise.synthesis.network.NetworkPredictions;
import gapwise.synthesis.network.NetworkStudy;
import gapwise.synthesis.network.Ranked;
import gapwise.synthesis.network.Split;
import java.util.ArrayList;
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
    List<String> treatments = network.treatments();
    NetworkShape shape =
        new NetworkShape(
            treatments,
            data.studies().stream().map(NetworkStudy::treatments).toList(),
            data.participants());
    return new NetworkResult(
        treatments,
        treatments.get(0),
        network.pieces(),
        effects(),
        heterogeneity(network.heterogeneity()),
        Optional.of(
            new NetworkResult.Parted(
                test(network.heterogeneity().q()),
                test(network.qHeterogeneity()),
                test(network.qInconsistency()))),
        network.designByTreatment().map(NetworkReport::interactions),
        network.designs().stream()
            .map(
                one ->
                    new NetworkResult.Design(
                        one.design(), one.test().q(), one.test().degreesOfFreedom()))
            .toList(),
        ranking(),
        shape.nodes(),
        shape.comparisons(),
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
    int size = network.treatments().size();
    NetworkResult.Effect[][] effects = new NetworkResult.Effect[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = i + 1; j < size; j++) {
        Optional<Comparison> comparison = network.comparison(i, j);
        if (comparison.isPresent()) {
          Optional<Split> split = network.split(i, j);
          effects[i][j] = effect(i, j, comparison.get(), split);
          effects[j][i] = effect(j, i, comparison.get().reversed(), split.map(Split::reversed));
        }
      }
    }
    List<NetworkResult.Effect> listed = new ArrayList<>();
    for (NetworkResult.Effect[] row : effects) {
      for (NetworkResult.Effect effect : row) {
        if (effect != null) {
          listed.add(effect);
        }
      }
    }
    return listed;
  }

  private NetworkResult.Effect effect(
      int one, int other, Comparison comparison, Optional<Split> split) {
    NetworkResult.Part all = part(comparison);
    return new NetworkResult.Effect(
        network.treatments().get(one),
        network.treatments().get(other),
        all.estimate(),
        all.standardError(),
        all.lower(),
        all.upper(),
        all.shown(),
        predictions.map(further -> prediction(further.of(one, other), data.shown())),
        split.map(Split::direct).map(this::part),
        split.map(Split::indirect).map(this::part),
        split
            .map(Split::difference)
            .map(
                apart ->
                    new NetworkResult.Disagreement(
                        apart.estimate(),
                        apart.standardError(),
                        apart.pValue(),
                        split.get().sides() ? Optional.of("side-splitting") : Optional.empty())),
        network.contributions(one, other).map(NetworkReport::contributions));
  }

  static NetworkResult.Interactions interactions(DesignByTreatment all) {
    return new NetworkResult.Interactions(
        all.test().q(),
        all.test().degreesOfFreedom(),
        all.test().pValue().orElseThrow(),
        all.tauSquared());
  }

  static NetworkResult.Predicted prediction(Interval interval, BackTransform back) {
    return new NetworkResult.Predicted(
        interval.lower(),
        interval.upper(),
        new NetworkResult.Limits(back.apply(interval.lower()), back.apply(interval.upper())));
  }

  private static List<NetworkResult.Contribution> contributions(List<Contribution> all) {
    return all.stream()
        .map(
            one ->
                new NetworkResult.Contribution(one.treatment(), one.against(), 100 * one.share()))
        .toList();
  }

  private NetworkResult.Part part(Comparison comparison) {
    return part(comparison, plan.settings().level(), data.shown());
  }

  static NetworkResult.Part part(Comparison comparison, double level, BackTransform back) {
    Interval interval = comparison.interval(level);
    return new NetworkResult.Part(
        comparison.estimate(),
        comparison.standardError(),
        interval.lower(),
        interval.upper(),
        new Result.Estimate(
            back.apply(comparison.estimate()),
            back.apply(interval.lower()),
            back.apply(interval.upper())));
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

  private Optional<List<NetworkResult.Ranking>> ranking() {
    return plan.higherIsBetter()
        .flatMap(higher -> network.ranking(higher, plan.draws()))
        .map(NetworkReport::ranking);
  }

  static List<NetworkResult.Ranking> ranking(List<Ranked> all) {
    return all.stream()
        .map(
            one ->
                new NetworkResult.Ranking(
                    one.treatment(),
                    one.meanRank(),
                    one.rankLower(),
                    one.rankUpper(),
                    one.rankProbabilities(),
                    one.pScore()))
        .toList();
  }
}
