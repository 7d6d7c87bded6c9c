package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Events over the time a group was watched.
 *
 * @param events at least 0; not a whole number after a correction for zero cells
 * @param personTime above 0, in the unit reported
 */
public record ArmRate(double events, double personTime) implements StudyData {
  /** Person-time below this is no time in any unit; a rate over it would pass all bounds. */
  private static final double SHORTEST_TIME = 1e-9;

  public ArmRate {
    if (!(events >= 0 && personTime > 0 && Double.isFinite(personTime))) {
      throw new IllegalArgumentException("no rate: " + events + " over " + personTime);
    }
  }

  /** Reads a row of one group; empty if something is missing or wrong, which is then noted. */
  public static Optional<ArmRate> of(Reported row) {
    return read(row, "");
  }

  /** Reads {@code events} and {@code personTime} of a group; empty if missing or wrong. */
  static Optional<ArmRate> read(Reported row, String group) {
    OptionalDouble events = row.requiredCount(Reported.role(group, "events"), 0);
    OptionalDouble time = row.required(Reported.role(group, "personTime"), SHORTEST_TIME);
    return events.isEmpty() || time.isEmpty()
        ? Optional.empty()
        : Optional.of(new ArmRate(events.getAsDouble(), time.getAsDouble()));
  }

  /** Events per unit of person-time. */
  public double rate() {
    return events / personTime;
  }

  /** The rate with something added to its events. */
  public ArmRate plus(double added) {
    return new ArmRate(events + added, personTime);
  }

  @Override
  public int arms() {
    return 1;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.empty();
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.of(events);
  }
}
