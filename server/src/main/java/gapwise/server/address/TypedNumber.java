package gapwise.server.address;

import gapwise.problem.Problems;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Numbers as people type them into an address; what is none is named as a problem. */
final class TypedNumber {
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,12}([.,]\\d{1,6})?");
  private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");

  private TypedNumber() {}

  /**
   * The number under a name; empty where none is typed, or none that is a number.
   *
   * @param expected what is expected, as the end of a sentence
   */
  static OptionalDouble of(Address address, String name, String expected, Problems problems) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (NUMBER.matcher(text).matches()) {
      return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }
    problems.add(name, "not-a-number", "'" + text + "' is not a number; expected " + expected);
    return OptionalDouble.empty();
  }

  /** The whole number of 0 or more under a name; empty where none is typed. */
  static OptionalLong whole(Address address, String name, String expected, Problems problems) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalLong.empty();
    }
    if (WHOLE.matcher(text).matches()) {
      return OptionalLong.of(Long.parseLong(text));
    }
    problems.add(
        name, "not-a-whole-number", "'" + text + "' is not a whole number; expected " + expected);
    return OptionalLong.empty();
  }
}
