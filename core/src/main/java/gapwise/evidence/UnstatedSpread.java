package gapwise.evidence;

import gapwise.evidence.unit.Unit;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Numbers that a paper prints beside a centre without saying whether they are a standard deviation,
 * a range or quartiles: {@code 36 ± 7} or {@code 12 (5-20)}. Kept as printed and never used for
 * pooling until a person settles what they are.
 *
 * @param first the number after a plus-minus sign, or the first in brackets
 * @param second the second in brackets; empty after a plus-minus sign
 * @param centre the number before them, where the paper does not even say whether it is a mean or a
 *     median; empty when it does, for then it stands there
 */
public record UnstatedSpread(double first, OptionalDouble second, OptionalDouble centre) {
  public UnstatedSpread {
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(centre, "centre");
    requireFinite(OptionalDouble.of(first));
    requireFinite(second);
    requireFinite(centre);
  }

  /** A spread beside a centre that is known to be a mean or a median. */
  public UnstatedSpread(double first, OptionalDouble second) {
    this(first, second, OptionalDouble.empty());
  }

  private static void requireFinite(OptionalDouble number) {
    if (number.isPresent() && !Double.isFinite(number.getAsDouble())) {
      throw new IllegalArgumentException("a spread must be finite numbers");
    }
  }

  UnstatedSpread in(Unit from, Unit to) {
    return new UnstatedSpread(
        from.to(to, first), carried(from, to, second), carried(from, to, centre));
  }

  private static OptionalDouble carried(Unit from, Unit to, OptionalDouble number) {
    return number.isPresent()
        ? OptionalDouble.of(from.to(to, number.getAsDouble()))
        : OptionalDouble.empty();
  }
}
