package gapwise.decision.weighing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What somebody says of the weights of criteria, as far as they want to: an order of importance,
 * the least or the most that a criterion shall count. Weights are 0 or more and add up to 1. What
 * contradicts itself is found when it is put to use ({@link Weighing#of}). Immutable.
 *
 * @param order codes of criteria, the most important first; those not named may count anything
 * @param atLeast least weight by code
 * @param atMost greatest weight by code
 */
public record Wishes(List<String> order, Map<String, Double> atLeast, Map<String, Double> atMost) {
  public Wishes {
    order = List.copyOf(order);
    atLeast = Map.copyOf(atLeast);
    atMost = Map.copyOf(atMost);
  }

  /** Nothing said: every set of weights is as likely. */
  public static Wishes none() {
    return new Wishes(List.of(), Map.of(), Map.of());
  }

  /** The same with an order of importance, the most important first. */
  public Wishes inOrder(List<String> codes) {
    return new Wishes(codes, atLeast, atMost);
  }

  /** The same with a least weight. */
  public Wishes atLeast(String code, double weight) {
    return new Wishes(order, with(atLeast, code, weight), atMost);
  }

  /** The same with a greatest weight. */
  public Wishes atMost(String code, double weight) {
    return new Wishes(order, atLeast, with(atMost, code, weight));
  }

  /** Whether nothing is said. */
  public boolean isEmpty() {
    return order.isEmpty() && atLeast.isEmpty() && atMost.isEmpty();
  }

  /** Every code that is named. */
  List<String> named() {
    List<String> named = new ArrayList<>(order);
    named.addAll(new TreeMap<>(atLeast).keySet());
    named.addAll(new TreeMap<>(atMost).keySet());
    return named;
  }

  private static Map<String, Double> with(Map<String, Double> all, String code, double weight) {
    Map<String, Double> more = new TreeMap<>(all);
    more.put(code, weight);
    return more;
  }
}
