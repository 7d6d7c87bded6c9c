package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Events over person-time in two groups.
 *
 * @param intervention the group whose effect is asked
 * @param comparator the group it is set against
 */
public record TwoRates(ArmRate intervention, ArmRate comparator) implements StudyData {

  /** Reads both groups; empty if something is missing or wrong. */
  static Optional<TwoRates> read(Reported row) {
    Optional<ArmRate> intervention = ArmRate.read(row, "intervention");
    Optional<ArmRate> comparator = ArmRate.read(row, "comparator");
    return intervention.flatMap(i -> comparator.map(c -> new TwoRates(i, c)));
  }

  /** Events in both groups. */
  public double eventTotal() {
    return intervention.events() + comparator.events();
  }

  @Override
  public int arms() {
    return 2;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.empty();
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.of(eventTotal());
  }
}
