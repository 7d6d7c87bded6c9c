package gapwise.decision.cost;

import gapwise.numeric.RandomValues;
import java.util.Arrays;

/** A row of chances from counts of moves: gamma values of these shapes, divided by their sum. */
public final class DirichletRow {
  private final double[] counts;

  private DirichletRow(double[] counts) {
    this.counts = counts;
  }

  /**
   * The row of these counts.
   *
   * @param counts how many went to each state, 0 or more, at least one above 0; a state to which
   *     nobody went stays without a chance
   */
  public static DirichletRow of(double... counts) {
    if (!Arrays.stream(counts).allMatch(n -> n >= 0 && Double.isFinite(n))
        || !(Arrays.stream(counts).sum() > 0)) {
      throw new IllegalArgumentException(
          "a row needs counts of 0 or more, had " + Arrays.toString(counts));
    }
    return new DirichletRow(counts.clone());
  }

  /** Chances that add up to 1. */
  public double[] draw(RandomValues random) {
    double[] drawn = new double[counts.length];
    Arrays.setAll(drawn, i -> counts[i] > 0 ? random.gamma(counts[i]) : 0);
    double sum = Arrays.stream(drawn).sum();
    return sum > 0 ? Arrays.stream(drawn).map(value -> value / sum).toArray() : mean();
  }

  /** The mean of each chance: its count over all. */
  public double[] mean() {
    double sum = Arrays.stream(counts).sum();
    return Arrays.stream(counts).map(count -> count / sum).toArray();
  }
}
