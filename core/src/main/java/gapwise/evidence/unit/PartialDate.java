package gapwise.evidence.unit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A year, or a month of a year: papers rarely say more.
 *
 * @param year 1800 to 2200
 * @param month 1 to 12, empty when only the year is known
 */
public record PartialDate(int year, OptionalInt month) {
  private static final Pattern FORM = Pattern.compile("(\\d{4})(?:-(\\d{1,2}))?");

  public PartialDate {
    if (year < 1800 || year > 2200) {
      throw new IllegalArgumentException("year must be 1800 to 2200, was " + year);
    }
    if (month.isPresent() && (month.getAsInt() < 1 || month.getAsInt() > 12)) {
      throw new IllegalArgumentException("month must be 1 to 12, was " + month.getAsInt());
    }
  }

  /** Reads {@code 2011} or {@code 2011-08}; empty when the text is neither. */
  public static Optional<PartialDate> parse(String text) {
    Matcher form = FORM.matcher(text.strip());
    if (!form.matches()) {
      return Optional.empty();
    }
    OptionalInt month =
        form.group(2) == null
            ? OptionalInt.empty()
            : OptionalInt.of(Integer.parseInt(form.group(2)));
    int year = Integer.parseInt(form.group(1));
    boolean valid =
        year >= 1800
            && year <= 2200
            && (month.isEmpty() || (month.getAsInt() >= 1 && month.getAsInt() <= 12));
    return valid ? Optional.of(new PartialDate(year, month)) : Optional.empty();
  }

  @JsonCreator
  static PartialDate ofText(String text) {
    return parse(text)
        .orElseThrow(() -> new IllegalArgumentException("not a year or month: " + text));
  }

  /** The earliest month that it can mean, as months since year 0. */
  public int earliestMonth() {
    return year * 12 + month.orElse(1) - 1;
  }

  /** The latest month that it can mean, as months since year 0. */
  public int latestMonth() {
    return year * 12 + month.orElse(12) - 1;
  }

  @Override
  @JsonValue
  public String toString() {
    return month.isPresent() ? String.format("%d-%02d", year, month.getAsInt()) : "" + year;
  }
}
