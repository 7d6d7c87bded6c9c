package gapwise.decision.weighing;

import gapwise.budget.Work;
import gapwise.numeric.RandomValues;
import java.util.Arrays;

/**
 * Draws weights, every set that keeps to the wishes as likely.
 *
 * <p>Uniform weights are exponential values over their sum; with least weights {@code w = l + (1 -
 * sum l) u}; a set put in order is uniform among ordered sets. What these do not cover is drawn and
 * thrown away until it fits. Where fewer than one in a hundred fit, a walk through the sets that do
 * is taken instead (hit-and-run: Tervonen and others, European Journal of Operational Research
 * 2013): two criteria are picked, a part of weight goes from one to the other, any as likely as the
 * limits and the order leave room for.
 */
final class WeightSampler {
  /** Sets tried before one way is chosen; our choice. */
  private static final int TRIED = 20_000;

  /** Share below which throwing away costs more than walking. */
  private static final double FEWEST_ACCEPTED = 0.01;

  /** Steps between two sets that are kept, for each criterion; our choice. */
  private static final int STEPS = 30;

  private final WeightBounds bounds;
  private final RandomValues random;
  private final boolean sorted;
  private final double accepted;
  private final double[] walker;

  WeightSampler(WeightBounds wished, RandomValues random) {
    this.bounds = wished.tight();
    this.random = random;
    this.sorted = isAlike(bounds);
    this.accepted = wished.onlyFromBelow() ? 1 : shareAccepted();
    this.walker = bounds.middle();
    if (walks()) {
      for (int i = 0; i < TRIED; i++) {
        step();
      }
    }
  }

  /** Whether criteria put in order have the same least weight, so that sorting keeps it. */
  private static boolean isAlike(WeightBounds bounds) {
    return Arrays.stream(bounds.order()).mapToDouble(i -> bounds.lower()[i]).distinct().count()
        <= 1;
  }

  private double shareAccepted() {
    int fit = 0;
    for (int i = 0; i < TRIED; i++) {
      fit += bounds.allow(proposed()) ? 1 : 0;
    }
    return (double) fit / TRIED;
  }

  /** Whether weights come from a walk and neighbours are a little alike. */
  boolean walks() {
    return accepted < FEWEST_ACCEPTED;
  }

  /** The next set of weights. */
  double[] next() {
    Work.check();
    if (walks()) {
      for (int i = 0; i < STEPS * walker.length; i++) {
        step();
      }
      return walker.clone();
    }
    double[] weights = proposed();
    while (!bounds.allow(weights)) {
      weights = proposed();
    }
    return weights;
  }

  private double[] proposed() {
    double[] weights = new double[bounds.lower().length];
    Arrays.setAll(weights, i -> random.exponential());
    double sum = Arrays.stream(weights).sum();
    double free = Math.max(0, 1 - bounds.leastSum());
    Arrays.setAll(weights, i -> bounds.lower()[i] + free * weights[i] / sum);
    if (sorted) {
      sort(weights);
    }
    return weights;
  }

  private void sort(double[] weights) {
    int[] order = bounds.order();
    double[] rising = Arrays.stream(order).mapToDouble(i -> weights[i]).sorted().toArray();
    for (int i = 0; i < order.length; i++) {
      weights[order[i]] = rising[order.length - 1 - i];
    }
  }

  /** Moves weight between two criteria, as far as limits and order leave room on both sides. */
  private void step() {
    int m = walker.length;
    if (m < 2) {
      return;
    }
    int up = random.below(m);
    int down = random.below(m - 1);
    down += down >= up ? 1 : 0;
    double most = Math.min(roomAbove(up, down), roomBelow(down, up));
    double least = -Math.min(roomBelow(up, down), roomAbove(down, up));
    double meeting = meeting(up, down);
    if (meeting > 0) {
      least = Math.max(least, -meeting);
    } else if (meeting < 0) {
      most = Math.min(most, -meeting);
    }
    double moved = least + random.uniform() * (most - least);
    if (Double.isFinite(moved)) {
      walker[up] += moved;
      walker[down] -= moved;
    }
  }

  /**
   * Two neighbours in the order that move towards each other meet half way: that half, above 0
   * where {@code up} stands before {@code down}; 0 where they are no neighbours.
   */
  private double meeting(int up, int down) {
    int first = place(up);
    int second = place(down);
    if (first < 0 || second < 0 || Math.abs(first - second) != 1) {
      return 0;
    }
    double half = Math.abs(walker[up] - walker[down]) / 2;
    // Exactly equal neighbours may only part; the least number keeps which of them is first.
    half = Math.max(half, Double.MIN_VALUE);
    return first < second ? half : -half;
  }

  private int place(int criterion) {
    for (int i = 0; i < bounds.order().length; i++) {
      if (bounds.order()[i] == criterion) {
        return i;
      }
    }
    return -1;
  }

  /** How far a weight can rise: to its limit, or to the one before it unless that moves too. */
  private double roomAbove(int criterion, int partner) {
    double room = bounds.upper()[criterion] - walker[criterion];
    int place = place(criterion);
    if (place > 0 && bounds.order()[place - 1] != partner) {
      room = Math.min(room, walker[bounds.order()[place - 1]] - walker[criterion]);
    }
    return Math.max(0, room);
  }

  private double roomBelow(int criterion, int partner) {
    double room = walker[criterion] - bounds.lower()[criterion];
    int place = place(criterion);
    if (place >= 0 && place + 1 < bounds.order().length && bounds.order()[place + 1] != partner) {
      room = Math.min(room, walker[criterion] - walker[bounds.order()[place + 1]]);
    }
    return Math.max(0, room);
  }
}
