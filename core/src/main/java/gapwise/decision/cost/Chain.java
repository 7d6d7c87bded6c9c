package gapwise.decision.cost;

import gapwise.budget.Work;
import java.util.Arrays;
import java.util.List;

/**
 * A cohort that moves between states at the end of each cycle: {@code s_t = s_(t-1) P_t}. What
 * comes next depends on the state alone, not on how long it has lasted (a Markov chain).
 */
public final class Chain {
  /** By how much the shares of a row may miss 1, from adding up alone. */
  private static final double ROUNDING = 1e-9;

  private final List<String> states;
  private final double[] start;
  private final Steps steps;
  private final int cycles;

  /** The chances of a cycle. */
  public interface Steps {
    /**
     * Row by row, the chance of being in each state after the cycle for those in the row's state
     * before it.
     *
     * @param cycle from 1
     */
    double[][] of(int cycle);
  }

  /**
   * Makes a chain.
   *
   * @param states names, in the order of all rows and columns
   * @param start share of the cohort in each at time 0, adding up to 1
   * @param steps chances of each cycle
   * @param cycles how many cycles to go, 1 or more
   */
  public Chain(List<String> states, double[] start, Steps steps, int cycles) {
    this.states = List.copyOf(states);
    this.start = start.clone();
    this.steps = steps;
    this.cycles = cycles;
    if (cycles < 1) {
      throw new IllegalArgumentException("a chain needs a cycle, had " + cycles);
    }
    row(start, "the start");
  }

  /** The course of the cohort. */
  public Trace run() {
    double[][] shares = new double[cycles + 1][];
    shares[0] = start.clone();
    for (int cycle = 1; cycle <= cycles; cycle++) {
      Work.check();
      shares[cycle] = after(shares[cycle - 1], steps.of(cycle), cycle);
    }
    return new Trace(states, shares, steps);
  }

  private double[] after(double[] before, double[][] chances, int cycle) {
    double[] after = new double[before.length];
    for (int from = 0; from < before.length; from++) {
      row(chances[from], "cycle " + cycle + " from " + states.get(from));
      for (int to = 0; to < after.length; to++) {
        after[to] += before[from] * chances[from][to];
      }
    }
    return after;
  }

  private void row(double[] chances, String where) {
    double sum = 0;
    double least = 0;
    for (double chance : chances) {
      sum += chance;
      least = Math.min(least, chance);
    }
    if (chances.length != states.size() || !(Math.abs(sum - 1) <= ROUNDING) || least < -ROUNDING) {
      throw new IllegalArgumentException(
          where
              + ": needs "
              + states.size()
              + " chances of 0 or more that add up to 1, was "
              + Arrays.toString(chances));
    }
  }
}
