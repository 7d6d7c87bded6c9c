package gapwise.evidence.unit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A day of the calendar, written year, month, day (ISO 8601).
 *
 * @param date the same as a date
 */
public record Day(LocalDate date) {
  /** Reads {@code 2026-05-14}; empty when the text is no such day. */
  public static Optional<Day> parse(String text) {
    try {
      return Optional.of(new Day(LocalDate.parse(text.strip())));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  @JsonCreator
  static Day ofText(String text) {
    return parse(text).orElseThrow(() -> new IllegalArgumentException("not a day: " + text));
  }

  @Override
  @JsonValue
  public String toString() {
    return date.toString();
  }
}
