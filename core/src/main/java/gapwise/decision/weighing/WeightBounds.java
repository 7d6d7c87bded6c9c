package gapwise.decision.weighing;

import java.util.Arrays;
import java.util.List;

/**
 * How little and how much each weight can be once limits, order and the sum of 1 are put together.
 *
 * @param lower by place of the criterion
 * @param upper by place of the criterion
 * @param order places of criteria, the most important first
 */
record WeightBounds(double[] lower, double[] upper, int[] order) {
  /** What is missing to a limit by rounding alone. */
  static final double ROUNDING = 1e-9;

  /** Rounds of tightening: each carries a limit on to all others, so few change anything. */
  private static final int MOST_ROUNDS = 50;

  /** The limits as wished, 0 and 1 where nothing is. */
  static WeightBounds of(List<Criterion> criteria, Wishes wishes) {
    List<String> codes = criteria.stream().map(Criterion::code).toList();
    double[] lower = new double[codes.size()];
    double[] upper = new double[codes.size()];
    Arrays.setAll(lower, i -> wishes.atLeast().getOrDefault(codes.get(i), 0.0));
    Arrays.setAll(upper, i -> wishes.atMost().getOrDefault(codes.get(i), 1.0));
    int[] order = wishes.order().stream().mapToInt(codes::indexOf).toArray();
    return new WeightBounds(lower, upper, order);
  }

  /** The same with the order put in: nothing counts less than what is less important. */
  WeightBounds ordered() {
    double[] low = lower.clone();
    double[] high = upper.clone();
    for (int i = order.length - 2; i >= 0; i--) {
      low[order[i]] = Math.max(low[order[i]], low[order[i + 1]]);
    }
    for (int i = 1; i < order.length; i++) {
      high[order[i]] = Math.min(high[order[i]], high[order[i - 1]]);
    }
    return new WeightBounds(low, high, order);
  }

  /** The same with what the others leave of the sum of 1; only where some weights are possible. */
  WeightBounds tight() {
    WeightBounds now = ordered();
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double least = Arrays.stream(now.lower).sum();
      double most = Arrays.stream(now.upper).sum();
      double[] low = now.lower.clone();
      double[] high = now.upper.clone();
      for (int i = 0; i < low.length; i++) {
        low[i] = Math.max(low[i], 1 - (most - now.upper[i]));
        high[i] = Math.max(low[i], Math.min(high[i], 1 - (least - now.lower[i])));
      }
      WeightBounds next = new WeightBounds(low, high, order).ordered();
      if (Arrays.equals(next.lower, now.lower) && Arrays.equals(next.upper, now.upper)) {
        break;
      }
      now = next;
    }
    return now;
  }

  double leastSum() {
    return Arrays.stream(lower).sum();
  }

  double greatestSum() {
    return Arrays.stream(upper).sum();
  }

  /** Whether all wishes hold for these weights. */
  boolean allow(double[] weights) {
    for (int i = 0; i < weights.length; i++) {
      if (weights[i] < lower[i] - ROUNDING || weights[i] > upper[i] + ROUNDING) {
        return false;
      }
    }
    for (int i = 1; i < order.length; i++) {
      if (weights[order[i]] > weights[order[i - 1]]) {
        return false;
      }
    }
    return true;
  }

  /** Whether nothing is asked but least weights, for which there is a formula. */
  boolean onlyFromBelow() {
    return order.length < 2 && Arrays.stream(upper).allMatch(u -> u >= 1);
  }

  /** Weights that keep to all wishes: as far from all lower limits as from all upper ones. */
  double[] middle() {
    double room = greatestSum() - leastSum();
    double share = room > 0 ? Math.max(0, Math.min(1, (1 - leastSum()) / room)) : 0;
    double[] middle = new double[lower.length];
    Arrays.setAll(middle, i -> lower[i] + share * (upper[i] - lower[i]));
    return middle;
  }
}
