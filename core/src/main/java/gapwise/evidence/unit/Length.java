package gapwise.evidence.unit;

import java.util.Objects;

/**
 * A length as printed.
 *
 * @param value 0 or more; 0 where a paper counts patients without a gap
 * @param unit a unit of length
 * @param approximate true where the paper says "about"
 */
public record Length(double value, Unit unit, boolean approximate) {
  public Length {
    Objects.requireNonNull(unit, "unit");
    if (unit.dimension() != Unit.Dimension.LENGTH) {
      throw new IllegalArgumentException(unit.symbol() + " is not a unit of length");
    }
    if (!(value >= 0) || !Double.isFinite(value)) {
      throw new IllegalArgumentException("a length must be 0 or more, was " + value);
    }
  }

  public double centimetres() {
    return unit.to(Unit.CENTIMETRES, value);
  }
}
