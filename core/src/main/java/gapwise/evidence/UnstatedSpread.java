package gapwise.evidence;

import java.util.OptionalDouble;

/**
 * Numbers that a paper prints beside a centre without saying whether they are a standard deviation,
 * a range or quartiles: {@code 36 ± 7} or {@code 12 (5-20)}. Kept as printed and never used for
 * pooling until a person settles what they are.
 *
 * @param first the number after a plus-minus sign, or the first in brackets
 * @param second the second in brackets; empty after a plus-minus sign
 */
public record UnstatedSpread(double first, OptionalDouble second) {
  public UnstatedSpread {
    if (!Double.isFinite(first) || (second.isPresent() && !Double.isFinite(second.getAsDouble()))) {
      throw new IllegalArgumentException("a spread must be finite numbers");
    }
  }

  UnstatedSpread in(Unit from, Unit to) {
    return new UnstatedSpread(
        from.to(to, first),
        second.isPresent()
            ? OptionalDouble.of(from.to(to, second.getAsDouble()))
            : OptionalDouble.empty());
  }
}
