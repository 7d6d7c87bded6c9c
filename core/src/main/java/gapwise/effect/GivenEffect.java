package gapwise.effect;

import gapwise.effect.SpreadConversion.FromTest;
import java.util.OptionalDouble;

/**
 * An effect as a study reports it, on the analysis scale.
 *
 * @param estimate finite
 * @param variance at least 0; empty if no measure of uncertainty is reported
 * @param offCentre whether the variance comes from limits in whose middle the effect does not lie
 * @param fromTest the test of the effect that its variance comes from
 */
public record GivenEffect(
    double estimate, OptionalDouble variance, boolean offCentre, FromTest fromTest)
    implements StudyData {
  /** An effect whose variance comes neither from limits out of balance nor from a test. */
  public GivenEffect(double estimate, OptionalDouble variance) {
    this(estimate, variance, false, FromTest.NONE);
  }

  public GivenEffect {
    if (!Double.isFinite(estimate) || variance.orElse(0) < 0) {
      throw new IllegalArgumentException("no effect: " + estimate + ", variance " + variance);
    }
  }

  @Override
  public int arms() {
    return 0;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.empty();
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.empty();
  }
}
