package gapwise.decision.cost;

import gapwise.budget.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Costs and effects of several methods in many draws of all that is uncertain (probabilistic
 * sensitivity analysis). In one draw every method meets the same values of what they share.
 * Immutable.
 */
public final class CostsAndEffects {
  /** "Nearly all" draws: so many of 1; our choice. */
  static final double NEARLY_ALL = 0.95;

  private final List<String> methods;
  private final double[][] costs;
  private final double[][] effects;

  private CostsAndEffects(List<String> methods, double[][] costs, double[][] effects) {
    this.methods = methods;
    this.costs = costs;
    this.effects = effects;
  }

  /**
   * Holds draws.
   *
   * @param methods two or more
   * @param costs by method, then by draw; finite
   * @param effects by method, then by draw; more is better; finite
   */
  public static CostsAndEffects of(List<String> methods, double[][] costs, double[][] effects) {
    int n = costs.length == 0 ? 0 : costs[0].length;
    if (methods.size() < 2
        || n == 0
        || costs.length != methods.size()
        || effects.length != methods.size()) {
      throw new IllegalArgumentException("needs costs and effects of two methods or more");
    }
    for (double[] row :
        IntStream.range(0, 2 * methods.size())
            .mapToObj(i -> i < methods.size() ? costs[i] : effects[i - methods.size()])
            .toList()) {
      if (row.length != n || !Arrays.stream(row).allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("every method needs " + n + " finite numbers");
      }
    }
    return new CostsAndEffects(List.copyOf(methods), copied(costs), copied(effects));
  }

  private static double[][] copied(double[][] rows) {
    return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
  }

  /** Codes or names, as given. */
  public List<String> methods() {
    return methods;
  }

  /** How many draws. */
  public int draws() {
    return costs[0].length;
  }

  /** The cost of a method in a draw. */
  public double cost(int method, int draw) {
    return costs[method][draw];
  }

  /** The effect of a method in a draw. */
  public double effect(int method, int draw) {
    return effects[method][draw];
  }

  /** The mean cost of a method. */
  public double meanCost(int method) {
    return mean(costs[method]);
  }

  /** The mean effect of a method. */
  public double meanEffect(int method) {
    return mean(effects[method]);
  }

  /**
   * What one unit of effect being worth so much money makes of the methods. Net benefit is {@code
   * lambda E - C}.
   *
   * @param lambda money for one unit of effect, 0 or more
   */
  public Acceptance at(double lambda) {
    if (!(lambda >= 0 && lambda < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("money for an effect must be 0 or more, was " + lambda);
    }
    int all = methods.size();
    int n = draws();
    double[] first = new double[all];
    double[] sums = new double[all];
    double greatest = 0;
    double[] benefit = new double[all];
    for (int i = 0; i < n; i++) {
      Work.check();
      double most = Double.NEGATIVE_INFINITY;
      for (int m = 0; m < all; m++) {
        benefit[m] = lambda * effects[m][i] - costs[m][i];
        sums[m] += benefit[m];
        most = Math.max(most, benefit[m]);
      }
      int alike = 0;
      for (double each : benefit) {
        alike += each == most ? 1 : 0;
      }
      for (int m = 0; m < all; m++) {
        first[m] += benefit[m] == most ? 1.0 / alike : 0;
      }
      greatest += most;
    }
    int best = 0;
    for (int m = 1; m < all; m++) {
      best = sums[m] > sums[best] ? m : best;
    }
    return new Acceptance(
        lambda,
        Arrays.stream(first).map(times -> times / n).boxed().toList(),
        Arrays.stream(sums).map(sum -> sum / n).boxed().toList(),
        best,
        Math.max(0, (greatest - sums[best]) / n));
  }

  /** The same at several amounts of money: the acceptability curves and their frontier. */
  public List<Acceptance> curve(List<Double> lambdas) {
    List<Acceptance> curve = new ArrayList<>();
    lambdas.forEach(lambda -> curve.add(at(lambda)));
    return List.copyOf(curve);
  }

  /** A method held against another, draw by draw. */
  public Increment increment(int method, int against) {
    double[] quarters = new double[4];
    int n = draws();
    for (int i = 0; i < n; i++) {
      boolean dearer = costs[method][i] > costs[against][i];
      boolean better = effects[method][i] > effects[against][i];
      quarters[(dearer ? 0 : 2) + (better ? 0 : 1)] += 1.0 / n;
    }
    double cost = meanCost(method) - meanCost(against);
    double effect = meanEffect(method) - meanEffect(against);
    boolean told = quarters[0] >= NEARLY_ALL && effect > 0;
    return new Increment(
        cost,
        effect,
        quarters[0],
        quarters[1],
        quarters[2],
        quarters[3],
        told ? OptionalDouble.of(cost / effect) : OptionalDouble.empty());
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).sum() / values.length;
  }
}
