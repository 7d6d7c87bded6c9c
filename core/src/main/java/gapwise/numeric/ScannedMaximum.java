package gapwise.numeric;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * The highest point of a smooth function on [0, upper] from its derivative. A likelihood of a
 * variance can have more than one hump, so the whole range is scanned on a fixed grid, each fall of
 * the derivative through 0 is narrowed down in its bracket, and the highest of these points and 0
 * is taken. Humps narrower than a step of the grid (a factor of about 1.5) can be missed.
 */
public final class ScannedMaximum {
  /** 64 points over twelve powers of ten. */
  private static final int POINTS = 64;

  private static final double SMALLEST_SHARE = 1e-12;

  private ScannedMaximum() {}

  /**
   * What was found.
   *
   * @param place where the function is highest, at least 0
   * @param converged whether the place is as exact as doubles allow; false if no fall was found
   *     inside
   */
  public record Maximum(double place, boolean converged) {}

  /** As below, with humps looked for from a share of 1e-12 of the upper end on. */
  public static Maximum find(
      DoubleUnaryOperator value, DoubleUnaryOperator derivative, double upper) {
    return find(value, derivative, upper, 0);
  }

  /**
   * Finds the highest point.
   *
   * @param value the function
   * @param derivative its derivative; must not be above 0 at {@code upper}
   * @param upper above 0
   * @param first the first place looked at after 0, as far as it lies from 1e-12 of the upper end
   *     to the upper end itself: no humps are looked for below it
   * @throws IllegalArgumentException if the function still rises at the upper end
   */
  public static Maximum find(
      DoubleUnaryOperator value, DoubleUnaryOperator derivative, double upper, double first) {
    if (!(upper > 0) || derivative.applyAsDouble(upper) > 0) {
      throw new IllegalArgumentException("the function does not fall at " + upper);
    }
    double from = 0;
    double slopeFrom = derivative.applyAsDouble(0);
    Optional<Maximum> best = slopeFrom <= 0 ? Optional.of(new Maximum(0, true)) : Optional.empty();
    for (int i = firstPoint(first / upper); i < POINTS; i++) {
      double to =
          i == POINTS - 1 ? upper : upper * Math.pow(SMALLEST_SHARE, 1 - i / (POINTS - 1.0));
      double slopeTo = derivative.applyAsDouble(to);
      if (slopeFrom > 0 && slopeTo <= 0) {
        BracketedRoot.Root root = BracketedRoot.findHoweverSmall(derivative, from, to);
        best = Optional.of(higher(value, best, new Maximum(root.value(), root.converged())));
      }
      from = to;
      slopeFrom = slopeTo;
    }
    return best.orElseGet(() -> new Maximum(upper, false));
  }

  /**
   * The number of the last point at or below a share of the upper end; the first if there is none.
   */
  private static int firstPoint(double share) {
    double at = (POINTS - 1) * (1 - Math.log(share) / Math.log(SMALLEST_SHARE));
    return at > 0 ? (int) Math.min(POINTS - 1, at) : 0;
  }

  private static Maximum higher(DoubleUnaryOperator value, Optional<Maximum> best, Maximum other) {
    return best.filter(
            one -> value.applyAsDouble(one.place()) >= value.applyAsDouble(other.place()))
        .orElse(other);
  }
}
