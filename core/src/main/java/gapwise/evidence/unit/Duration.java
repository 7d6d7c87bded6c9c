package gapwise.evidence.unit;

import java.util.Objects;

/**
 * A time as printed.
 *
 * @param value 0 or more
 * @param unit a unit of time
 */
public record Duration(double value, Unit unit) {
  public Duration {
    Objects.requireNonNull(unit, "unit");
    if (unit.dimension() != Unit.Dimension.TIME) {
      throw new IllegalArgumentException(unit.symbol() + " is not a unit of time");
    }
    if (!(value >= 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException("a time must be 0 or more, was " + value);
    }
  }

  public static Duration ofMonths(double months) {
    return new Duration(months, Unit.MONTHS);
  }

  public double months() {
    return unit.to(Unit.MONTHS, value);
  }
}
