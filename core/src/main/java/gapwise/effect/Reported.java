package gapwise.effect;

import java.util.OptionalDouble;

/**
 * What one row reports, by role ({@code events}, {@code intervention.total}, ...), and what was
 * found wrong or missing while reading it.
 */
public interface Reported {
  /** Ten thousand times the number of people alive; counts up to here are exact as doubles. */
  double LARGEST_COUNT = 1e14;

  /** The number in a role; empty if the row has none. A text that is no number has been noted. */
  OptionalDouble number(String role);

  /** Notes a value that cannot be: the data are wrong. */
  void wrong(String role, String code, String message);

  /** Notes a value that the row would need and does not have: the row cannot be used. */
  void missing(String role);

  /**
   * A value that must be there and hold.
   *
   * @param atLeast smallest value allowed
   * @return empty if it is missing or wrong, which has then been noted
   */
  default OptionalDouble required(String role, double atLeast) {
    OptionalDouble value = number(role);
    if (value.isEmpty()) {
      missing(role);
      return value;
    }
    return checked(role, value.getAsDouble(), atLeast);
  }

  /** A value that may be left out, but must hold if it is there. */
  default OptionalDouble optional(String role, double atLeast) {
    OptionalDouble value = number(role);
    return value.isEmpty() ? value : checked(role, value.getAsDouble(), atLeast);
  }

  /** A whole number that must be there; see {@link #required}. */
  default OptionalDouble requiredCount(String role, double atLeast) {
    OptionalDouble value = required(role, atLeast);
    if (value.isPresent() && value.getAsDouble() != Math.rint(value.getAsDouble())) {
      wrong(
          role,
          "not-a-whole-number",
          "found "
              + value.getAsDouble()
              + ", expected a count of people or events; correct the value");
      return OptionalDouble.empty();
    }
    if (value.isPresent() && value.getAsDouble() > LARGEST_COUNT) {
      wrong(
          role,
          "value-too-large",
          "found " + value.getAsDouble() + ", more than can be counted; correct the value");
      return OptionalDouble.empty();
    }
    return value;
  }

  /** Whether a role holds a bound such as "<0.05" and no value. */
  boolean isBound(String role);

  /** Whether a p value is given by a bound alone; 0.000 in print is one too. */
  default boolean isBoundOfP(String role) {
    return isBound(role) || number(role).orElse(1) == 0;
  }

  /** A two-sided p value that may be left out; one that is not above 0 and up to 1 is noted. */
  default OptionalDouble optionalP(String role) {
    OptionalDouble value = number(role);
    if (value.isEmpty() || (value.getAsDouble() > 0 && value.getAsDouble() <= 1)) {
      return value;
    }
    wrong(
        role,
        "out-of-range",
        "found "
            + value.getAsDouble()
            + ", expected a two-sided p value above 0 and not above 1; correct it, or leave the cell"
            + " empty");
    return OptionalDouble.empty();
  }

  private OptionalDouble checked(String role, double value, double atLeast) {
    if (value >= atLeast) {
      return OptionalDouble.of(value);
    }
    wrong(
        role,
        value < 0 && atLeast >= 0 ? "negative-count" : "value-too-small",
        "found " + value + ", expected at least " + atLeast + "; correct the value");
    return OptionalDouble.empty();
  }

  /** The role of one group: {@code events} alone, or with the group's name and a dot before it. */
  static String role(String group, String name) {
    return group.isEmpty() ? name : group + "." + name;
  }
}
