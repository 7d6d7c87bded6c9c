package gapwise.evidence;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How many of how many, as reported. Any part may be missing in print, but not all.
 *
 * @param events 0 to total
 * @param total at least 1
 * @param percentAsReported 0 to 100, even where it contradicts the counts
 * @param countedBack true when events were counted back from a printed percentage
 */
public record EventCount(
    OptionalInt events, OptionalInt total, OptionalDouble percentAsReported, boolean countedBack) {

  public EventCount {
    Objects.requireNonNull(events, "events");
    Objects.requireNonNull(total, "total");
    Objects.requireNonNull(percentAsReported, "percentAsReported");
    if (events.isEmpty() && percentAsReported.isEmpty()) {
      throw new IllegalArgumentException("a count needs events or a percentage");
    }
    if (events.isPresent() && events.getAsInt() < 0) {
      throw new IllegalArgumentException("events must not be negative, was " + events.getAsInt());
    }
    if (total.isPresent() && total.getAsInt() < 1) {
      throw new IllegalArgumentException("total must be at least 1, was " + total.getAsInt());
    }
    if (events.isPresent() && total.isPresent() && events.getAsInt() > total.getAsInt()) {
      throw new IllegalArgumentException(
          "events " + events.getAsInt() + " exceed total " + total.getAsInt());
    }
    if (percentAsReported.isPresent()
        && !(percentAsReported.getAsDouble() >= 0 && percentAsReported.getAsDouble() <= 100)) {
      throw new IllegalArgumentException(
          "percentage must be 0 to 100, was " + percentAsReported.getAsDouble());
    }
  }

  /** Events of a total, both known. */
  public static EventCount of(int events, int total) {
    return new EventCount(
        OptionalInt.of(events), OptionalInt.of(total), OptionalDouble.empty(), false);
  }

  /** A percentage alone. */
  public static EventCount ofPercent(double percent) {
    return new EventCount(
        OptionalInt.empty(), OptionalInt.empty(), OptionalDouble.of(percent), false);
  }

  /** The share from 0 to 1: from the counts where both are known, else from the percentage. */
  public Optional<Double> share() {
    if (events.isPresent() && total.isPresent()) {
      return Optional.of(events.getAsInt() / (double) total.getAsInt());
    }
    return percentAsReported.isPresent()
        ? Optional.of(percentAsReported.getAsDouble() / 100)
        : Optional.empty();
  }

  /** Whether both counts are known, so that the value can be pooled. */
  public boolean isComplete() {
    return events.isPresent() && total.isPresent();
  }
}
