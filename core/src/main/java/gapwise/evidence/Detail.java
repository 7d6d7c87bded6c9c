package gapwise.evidence;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One detail of a method or of patients, as written, with its number where it is one.
 *
 * @param words as written in the template
 * @param number the same as a number in the unit of the detail's vocabulary entry
 */
public record Detail(String words, OptionalDouble number) {
  public Detail {
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(number, "number");
    if (words.isBlank()) {
      throw new IllegalArgumentException("a detail needs words");
    }
  }
}
