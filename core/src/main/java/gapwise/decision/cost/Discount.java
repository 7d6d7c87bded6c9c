package gapwise.decision.cost;

import java.util.Arrays;

/**
 * What later costs or effects are worth today: {@code (1 + r)^(-t)} after t years.
 *
 * @param yearlyRate r, 0 or more, such as 0.03
 * @param cyclesPerYear 1 or more; 12 for months
 */
public record Discount(double yearlyRate, int cyclesPerYear) {
  public Discount {
    if (!(yearlyRate >= 0 && yearlyRate < Double.POSITIVE_INFINITY) || cyclesPerYear < 1) {
      throw new IllegalArgumentException(
          "no discount: rate " + yearlyRate + ", cycles a year " + cyclesPerYear);
    }
  }

  /** The factor at a time in cycles, 1 at time 0. */
  public double factor(double time) {
    return Math.pow(1 + yearlyRate, -time / cyclesPerYear);
  }

  /** The factors at times 0 to a number of cycles. */
  double[] factors(int cycles) {
    double[] factors = new double[cycles + 1];
    Arrays.setAll(factors, this::factor);
    return factors;
  }
}
