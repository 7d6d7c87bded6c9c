package gapwise.figure.value;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What the numbers of a figure are, which decides axis, ticks, rounding and the no-effect line.
 *
 * @param kind the kind of number
 * @param unit the unit in words, such as "months"; empty where the kind needs none
 */
public record Quantity(Kind kind, String unit) {
  /** Kinds of number that a figure can show. */
  public enum Kind {
    /** A proportion from 0 to 1, shown as whole numbers of 100. */
    OF_100,
    /** A difference of two proportions from -1 to 1, shown as more or fewer of 100. */
    DIFFERENCE_OF_100,
    /** A ratio above 0 on a logarithmic axis; 1 is no effect. */
    RATIO,
    /** A mean in a unit. */
    MEAN,
    /** A difference in a unit; 0 is no effect. */
    DIFFERENCE
  }

  public Quantity {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(unit, "unit");
  }

  /** A proportion (0 to 1), shown of 100. */
  public static Quantity of100() {
    return new Quantity(Kind.OF_100, "");
  }

  /** A difference of proportions (-1 to 1), shown of 100. */
  public static Quantity differenceOf100() {
    return new Quantity(Kind.DIFFERENCE_OF_100, "");
  }

  /** A ratio. */
  public static Quantity ratio() {
    return new Quantity(Kind.RATIO, "");
  }

  /** A mean in a unit, such as "months", "cm" or "operations". */
  public static Quantity mean(String unit) {
    return new Quantity(Kind.MEAN, unit);
  }

  /** A difference of means in a unit; an empty unit for a standardised difference. */
  public static Quantity difference(String unit) {
    return new Quantity(Kind.DIFFERENCE, unit);
  }

  public boolean logarithmic() {
    return kind == Kind.RATIO;
  }

  /** Factor from the value given to the number that stands on the axis. */
  public double axisFactor() {
    return kind == Kind.OF_100 || kind == Kind.DIFFERENCE_OF_100 ? 100 : 1;
  }

  /** The value given at which there is no effect, for measures of an effect. */
  public OptionalDouble noEffect() {
    return switch (kind) {
      case RATIO -> OptionalDouble.of(1);
      case DIFFERENCE, DIFFERENCE_OF_100 -> OptionalDouble.of(0);
      case OF_100, MEAN -> OptionalDouble.empty();
    };
  }

  /** Smallest value that the kind of number can take. */
  double smallest() {
    return switch (kind) {
      case OF_100, RATIO -> 0;
      case DIFFERENCE_OF_100 -> -1;
      case MEAN, DIFFERENCE -> Double.NEGATIVE_INFINITY;
    };
  }

  /** Largest value that the kind of number can take. */
  double largest() {
    return switch (kind) {
      case OF_100, DIFFERENCE_OF_100 -> 1;
      case RATIO, MEAN, DIFFERENCE -> Double.POSITIVE_INFINITY;
    };
  }

  /** Refuses a value that such a number cannot be; {@code where} names it in the message. */
  public void check(Estimate estimate, String where) {
    check(estimate.limits(), where);
    boolean impossible = estimate.value() < smallest() || estimate.value() > largest();
    if (impossible || (kind == Kind.RATIO && estimate.value() == 0)) {
      throw new IllegalArgumentException(where + ": " + estimate.value() + " cannot be " + kind);
    }
  }

  public void check(Limits limits, String where) {
    if (limits.lower() < smallest() || limits.upper() > largest()) {
      throw new IllegalArgumentException(where + ": " + limits + " cannot be " + kind);
    }
  }
}
