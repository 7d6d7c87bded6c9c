package gapwise.figure.value;

import java.util.Objects;

/** What the values of this room refuse at birth, worded in one way. */
public final class Check {
  private Check() {}

  public static String words(String text, String name) {
    Objects.requireNonNull(text, name);
    if (text.isBlank()) {
      throw new IllegalArgumentException(name + " must say something, was blank");
    }
    return text;
  }

  public static double finite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be a finite number, was " + value);
    }
    return value;
  }

  public static double centimetres(double value, String name) {
    if (!(finite(value, name) >= 0)) {
      throw new IllegalArgumentException(name + " must be 0 cm or more, was " + value);
    }
    return value;
  }
}
