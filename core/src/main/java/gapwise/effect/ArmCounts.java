package gapwise.effect;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Events among the patients of one group.
 *
 * @param events 0 to total; not a whole number after a correction for zero cells
 * @param total above 0
 */
public record ArmCounts(double events, double total) implements StudyData {
  public ArmCounts {
    if (!(total > 0 && events >= 0 && events <= total && Double.isFinite(total))) {
      throw new IllegalArgumentException("no counts: " + events + " of " + total);
    }
  }

  /** Reads a row of one group; empty if something is missing or wrong, which is then noted. */
  public static Optional<ArmCounts> of(Reported row) {
    return read(row, "");
  }

  /** Reads {@code events} and {@code total} of a group; empty if they are missing or wrong. */
  static Optional<ArmCounts> read(Reported row, String group) {
    String eventsRole = Reported.role(group, "events");
    String totalRole = Reported.role(group, "total");
    OptionalDouble events = row.requiredCount(eventsRole, 0);
    OptionalDouble total = row.requiredCount(totalRole, 1);
    if (events.isEmpty() || total.isEmpty()) {
      return Optional.empty();
    }
    if (events.getAsDouble() > total.getAsDouble()) {
      row.wrong(
          eventsRole,
          "events-exceed-total",
          String.format(
              "found %.0f events in %.0f patients, expected no more events than patients;"
                  + " correct one of them, or report events over person-time",
              events.getAsDouble(), total.getAsDouble()));
      return Optional.empty();
    }
    return Optional.of(new ArmCounts(events.getAsDouble(), total.getAsDouble()));
  }

  /** Patients without the event. */
  public double nonEvents() {
    return total - events;
  }

  /** Events over patients. */
  public double proportion() {
    return events / total;
  }

  /** The counts with something added to events and to non-events. */
  public ArmCounts plus(double added) {
    return new ArmCounts(events + added, total + 2 * added);
  }

  @Override
  public int arms() {
    return 1;
  }

  @Override
  public OptionalDouble participants() {
    return OptionalDouble.of(total);
  }

  @Override
  public OptionalDouble allEvents() {
    return OptionalDouble.of(events);
  }
}
