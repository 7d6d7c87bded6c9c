package gapwise.decision.cost;

import gapwise.budget.Work;
import java.util.List;

/** Where a cohort is at each time, and what that comes to. */
public final class Trace {
  private final List<String> states;
  private final double[][] shares;
  private final Chain.Steps steps;

  Trace(List<String> states, double[][] shares, Chain.Steps steps) {
    this.states = states;
    this.shares = shares;
    this.steps = steps;
  }

  /** What a cycle in a state counts, such as its cost. */
  public interface StateValue {
    /** At a time from 0, in a state by its place. */
    double at(int time, int state);
  }

  /** Names of the states, in order. */
  public List<String> states() {
    return states;
  }

  /** Cycles gone through; times run from 0 to this. */
  public int cycles() {
    return shares.length - 1;
  }

  /** The share of the cohort in a state at a time, 0 to 1. */
  public double share(int time, int state) {
    return shares[time][state];
  }

  /**
   * The share of the cohort that goes from one state to another at the end of a cycle. What falls
   * on such a move falls on time {@code cycle} whole, with no half cycle.
   *
   * @param cycle from 1
   */
  public double moved(int cycle, int from, int to) {
    return shares[cycle - 1][from] * steps.of(cycle)[from][to];
  }

  /** The share of the cohort that comes into a state from others at the end of a cycle. */
  public double entered(int cycle, int state) {
    double sum = 0;
    for (int from = 0; from < states.size(); from++) {
      sum += from == state ? 0 : moved(cycle, from, state);
    }
    return sum;
  }

  /**
   * What states come to over all cycles: the sum over times of weight, discount, share and value.
   *
   * @param value of a cycle in each state
   * @param discount of later times
   * @param counting at which times of a cycle states are counted
   */
  public double total(StateValue value, Discount discount, Counting counting) {
    double sum = 0;
    for (int time = 0; time <= cycles(); time++) {
      Work.check();
      double weight = counting.weight(time, cycles()) * discount.factor(time);
      for (int state = 0; state < states.size() && weight > 0; state++) {
        sum += weight * shares[time][state] * value.at(time, state);
      }
    }
    return sum;
  }

  /**
   * The cycles spent in each state, discounted: what {@link #total} gives for a value of 1 in that
   * state alone.
   */
  public double[] spent(Discount discount, Counting counting) {
    double[] spent = new double[states.size()];
    double[] factors = discount.factors(cycles());
    for (int time = 0; time <= cycles(); time++) {
      double weight = counting.weight(time, cycles()) * factors[time];
      for (int state = 0; state < spent.length; state++) {
        spent[state] += weight * shares[time][state];
      }
    }
    return spent;
  }
}
