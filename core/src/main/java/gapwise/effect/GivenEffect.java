package gapwise.effect;

import java.util.OptionalDouble;

/**
 * An effect as a study reports it, on the analysis scale.
 *
 * @param estimate finite
 * @param variance at least 0; empty if no measure of uncertainty is reported
 * @param offCentre whether the variance comes from limits in whose middle the effect does not lie
 */
public record GivenEffect(double estimate, OptionalDouble variance, boolean offCentre)
    implements StudyData {
  /** An effect whose variance does not come from limits out of balance. */
  public GivenEffect(double estimate, OptionalDouble variance) {
    this(estimate, variance, false);
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
