package gapwise.figure.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Round numbers on an axis: steps of 1, 2 or 5 times a power of ten on a linear axis, 1, 2 and 5 in
 * each decade on a logarithmic one. The axis is widened outwards to such numbers.
 *
 * @param lower lower end of the axis
 * @param upper upper end of the axis, above {@code lower}
 * @param values the ticks, rising, within the ends
 */
public record Ticks(double lower, double upper, List<BigDecimal> values) {
  private static final int[] ROUND = {1, 2, 5};

  /** Two numbers do not show how an axis runs between them. */
  public static final int FEWEST = 3;

  public Ticks {
    values = List.copyOf(values);
    if (!(lower < upper)) {
      throw new IllegalArgumentException(
          "an axis needs lower < upper, was " + lower + ", " + upper);
    }
  }

  /**
   * Ticks of a linear axis that covers both values: three at least, at most {@code most} (from 4).
   */
  public static Ticks linear(double lower, double upper, int most) {
    double low = lower;
    double high = upper;
    if (!(high > low)) {
      double room = Math.max(Math.abs(low) * 0.1, 1e-6);
      low -= room;
      high += room;
    }
    int exponent = (int) Math.floor(Math.log10((high - low) / most)) - 1;
    for (int i = 0; ; i++) {
      BigDecimal step = BigDecimal.valueOf(ROUND[i % 3]).scaleByPowerOfTen(exponent + i / 3);
      BigDecimal first = multiple(low, step, RoundingMode.FLOOR);
      BigDecimal last = multiple(high, step, RoundingMode.CEILING);
      int count = last.subtract(first).divide(step, 0, RoundingMode.HALF_UP).intValueExact() + 1;
      if (count <= most) {
        List<BigDecimal> values = new ArrayList<>();
        for (int j = 0; j < count; j++) {
          values.add(first.add(step.multiply(BigDecimal.valueOf(j))));
        }
        return new Ticks(first.doubleValue(), last.doubleValue(), values);
      }
    }
  }

  private static BigDecimal multiple(double value, BigDecimal step, RoundingMode mode) {
    return BigDecimal.valueOf(value).divide(step, 0, mode).multiply(step);
  }

  /**
   * Ticks of a logarithmic axis that covers both values (above 0): three at least, at most {@code
   * most} (from 4). They are 1, 2 and 5 of each decade, else powers of ten, else every second power
   * and so on; on a stretch too short for three of those, the round steps of a linear axis.
   */
  public static Ticks logarithmic(double lower, double upper, int most) {
    if (!(lower > 0 && upper >= lower)) {
      throw new IllegalArgumentException("a log axis needs 0 < lower <= upper, was " + lower);
    }
    List<BigDecimal> fine = fine(lower, upper);
    if (fine.size() < FEWEST) {
      return linear(lower, upper, most);
    }
    if (fine.size() <= most) {
      return ends(fine);
    }
    for (int every = 1; ; every++) {
      int first = Math.floorDiv((int) Math.floor(Math.log10(lower)), every) * every;
      List<BigDecimal> powers = new ArrayList<>();
      int power = first;
      powers.add(BigDecimal.ONE.scaleByPowerOfTen(power));
      while (powers.get(powers.size() - 1).doubleValue() < upper) {
        power += every;
        powers.add(BigDecimal.ONE.scaleByPowerOfTen(power));
      }
      if (powers.size() <= most) {
        return ends(powers);
      }
    }
  }

  private static Ticks ends(List<BigDecimal> values) {
    return new Ticks(
        values.get(0).doubleValue(), values.get(values.size() - 1).doubleValue(), values);
  }

  /** The numbers 1, 2, 5 of every decade from the last not above lower to the first not below. */
  private static List<BigDecimal> fine(double lower, double upper) {
    List<BigDecimal> values = new ArrayList<>();
    int exponent = (int) Math.floor(Math.log10(lower)) - 1;
    for (int i = 0; values.isEmpty() || last(values) < upper || values.size() < 2; i++) {
      BigDecimal value = BigDecimal.valueOf(ROUND[i % 3]).scaleByPowerOfTen(exponent + i / 3);
      if (value.doubleValue() <= lower) {
        values.clear();
      }
      values.add(value);
    }
    return values;
  }

  private static double last(List<BigDecimal> values) {
    return values.get(values.size() - 1).doubleValue();
  }
}
