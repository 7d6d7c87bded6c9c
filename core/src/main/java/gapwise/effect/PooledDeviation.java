package gapwise.effect;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How far patients lie from the mean of their own group: the root of the mean of the groups'
 * variances weighted by n - 1, the pooled variance of every textbook.
 */
public final class PooledDeviation {
  private PooledDeviation() {}

  /**
   * The standard deviation, in the unit of the groups.
   *
   * @return empty where no group of two patients reports one
   */
  public static OptionalDouble of(List<ArmMean> groups) {
    List<ArmMean> told =
        groups.stream().filter(one -> one.sd().isPresent() && one.n() > 1).toList();
    double freedom = told.stream().mapToDouble(one -> one.n() - 1).sum();
    double largest = told.stream().mapToDouble(one -> one.sd().getAsDouble()).max().orElse(0);
    if (told.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (largest == 0 || Double.isInfinite(largest)) {
      return OptionalDouble.of(largest);
    }
    double squares = 0;
    for (ArmMean one : told) {
      // Over the largest, so that no square leaves the range of numbers.
      double part = one.sd().getAsDouble() / largest;
      squares += (one.n() - 1) * part * part;
    }
    return OptionalDouble.of(largest * Math.sqrt(squares / freedom));
  }
}
