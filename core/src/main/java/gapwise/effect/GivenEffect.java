package gapwise.effect;

import java.util.OptionalDouble;

/**
 * An effect as a study reports it, on the analysis scale.
 *
 * @param estimate finite
 * @param variance at least 0; empty if no measure of uncertainty is reported
 */
public record GivenEffect(double estimate, OptionalDouble variance) implements StudyData {
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
