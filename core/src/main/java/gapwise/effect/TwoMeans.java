package gapwise.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Means of two groups.
 *
 * @param intervention the group whose effect is asked
 * @param comparator the group it is set against
 */
public record TwoMeans(ArmMean intervention, ArmMean comparator) implements StudyData {

  /** Reads both groups; empty if something is missing or wrong. */
  static Optional<TwoMeans> read(Reported row) {
    Optional<ArmMean> intervention = ArmMean.read(row, "intervention");
    Optional<ArmMean> comparator = ArmMean.read(row, "comparator");
    return intervention.flatMap(i -> comparator.map(c -> new TwoMeans(i, c)));
  }

  /** Whether either mean or spread was worked out from a median. */
  boolean fromMedian() {
    return intervention.fromMedian() || comparator.fromMedian();
  }

  /** Whether the median of either group lies too far to one side for values near normal. */
  boolean looksSkewed() {
    return intervention.looksSkewed() || comparator.looksSkewed();
  }

  @Override
  public List<ArmMean> means() {
    return List.of(intervention, comparator);
  }

  @Override
  public int arms() {
    return 2;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.of(intervention.n() + comparator.n());
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.empty();
  }
}
