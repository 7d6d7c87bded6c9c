package gapwise.analysis.network;

import gapwise.analysis.result.Result;
import gapwise.effect.BackTransform;
import gapwise.effect.Interval;
import gapwise.synthesis.network.Comparison;
import gapwise.synthesis.network.Contribution;
import gapwise.synthesis.network.NetworkPredictions;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Every ordered pair of treatments in the form of a result, by whichever likelihood it was
 * compared.
 *
 * @param treatments in their order
 * @param level of intervals
 * @param back to what people read
 * @param predictions for a further study
 */
record NetworkEffects(
    List<String> treatments,
    double level,
    BackTransform back,
    Optional<NetworkPredictions> predictions) {

  /** One treatment less another with its limits, and by its two ways where they can be parted. */
  record Compared(Comparison comparison, Interval interval, Optional<Ways> ways) {
    private Compared reversed() {
      return new Compared(
          comparison.reversed(),
          new Interval(-interval.upper(), -interval.lower()),
          ways.map(Ways::reversed));
    }
  }

  /**
   * The two ways.
   *
   * @param difference direct less indirect
   * @param pValue of no difference
   * @param method as {@link NetworkResult.Disagreement} names it
   */
  record Ways(
      Comparison direct,
      Comparison indirect,
      Comparison difference,
      double pValue,
      Optional<String> method) {
    private Ways reversed() {
      return new Ways(
          direct.reversed(), indirect.reversed(), difference.reversed(), pValue, method);
    }
  }

  /** Where comparisons come from, by places of treatments. */
  interface Source {
    /** Asked once for a pair, the earlier treatment first; empty if no studies join it. */
    Optional<Compared> compared(int one, int other);

    /** What direct comparisons contribute, if it can be told. */
    default Optional<List<Contribution>> contributions(int one, int other) {
      return Optional.empty();
    }
  }

  /** All pairs that are joined, in the order of treatments. */
  List<NetworkResult.Effect> of(Source source) {
    int size = treatments.size();
    SortedMap<Integer, NetworkResult.Effect> inOrder = new TreeMap<>();
    for (int i = 0; i < size; i++) {
      for (int j = i + 1; j < size; j++) {
        Optional<Compared> compared = source.compared(i, j);
        if (compared.isPresent()) {
          inOrder.put(i * size + j, effect(i, j, compared.get(), source));
          inOrder.put(j * size + i, effect(j, i, compared.get().reversed(), source));
        }
      }
    }
    return List.copyOf(inOrder.values());
  }

  private NetworkResult.Effect effect(int one, int other, Compared compared, Source source) {
    NetworkResult.Part all = part(compared.comparison(), compared.interval());
    return new NetworkResult.Effect(
        treatments.get(one),
        treatments.get(other),
        all.estimate(),
        all.standardError(),
        all.lower(),
        all.upper(),
        all.shown(),
        predictions.map(further -> prediction(further.of(one, other))),
        compared.ways().map(Ways::direct).map(this::part),
        compared.ways().map(Ways::indirect).map(this::part),
        compared.ways().map(NetworkEffects::disagreement),
        source.contributions(one, other).map(NetworkEffects::contributions));
  }

  private NetworkResult.Part part(Comparison comparison) {
    return part(comparison, comparison.interval(level));
  }

  private NetworkResult.Part part(Comparison comparison, Interval interval) {
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

  private NetworkResult.Predicted prediction(Interval interval) {
    return new NetworkResult.Predicted(
        interval.lower(),
        interval.upper(),
        new NetworkResult.Limits(back.apply(interval.lower()), back.apply(interval.upper())));
  }

  private static NetworkResult.Disagreement disagreement(Ways ways) {
    return new NetworkResult.Disagreement(
        ways.difference().estimate(),
        ways.difference().standardError(),
        ways.pValue(),
        ways.method());
  }

  private static List<NetworkResult.Contribution> contributions(List<Contribution> all) {
    return all.stream()
        .map(
            one ->
                new NetworkResult.Contribution(one.treatment(), one.against(), 100 * one.share()))
        .toList();
  }
}
