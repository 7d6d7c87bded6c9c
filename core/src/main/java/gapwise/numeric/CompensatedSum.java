package gapwise.numeric;

import java.util.function.IntToDoubleFunction;

/**
 * A sum in a fixed order that carries the rounding error of each addition along (Neumaier, Z Angew
 * Math Mech 1974;54:39), so that a million small terms beside a large one are not lost and the same
 * terms always give the same bits.
 */
public final class CompensatedSum {
  private double sum;
  private double correction;

  /** The sum of {@code term(0) ... term(count - 1)}. */
  public static double over(int count, IntToDoubleFunction term) {
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < count; i++) {
      sum.add(term.applyAsDouble(i));
    }
    return sum.value();
  }

  /** Adds one term. */
  public void add(double term) {
    double next = sum + term;
    if (Math.abs(sum) >= Math.abs(term)) {
      correction += (sum - next) + term;
    } else {
      correction += (term - next) + sum;
    }
    sum = next;
  }

  /** The sum so far. */
  public double value() {
    return Double.isFinite(sum) ? sum + correction : sum;
  }
}
