package gapwise.reference.likeness;

import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Numbers written in words or as Roman numerals, as titles have them. */
final class Numerals {
  private static final List<String> UNITS =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");

  private static final List<String> TENS =
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

  /** Up to 39, the form that counts one to three of a sign and then subtracts. */
  private static final Pattern ROMAN = Pattern.compile("(x{0,3})(ix|iv|v?i{0,3})");

  private Numerals() {}

  /** A number of one word, 0 to 20 or full tens. */
  static OptionalInt unit(String word) {
    int at = UNITS.indexOf(word);
    return at < 0 ? OptionalInt.empty() : OptionalInt.of(at);
  }

  /** Full tens from twenty to ninety. */
  static OptionalInt tens(String word) {
    int at = TENS.indexOf(word);
    return at < 0 ? OptionalInt.empty() : OptionalInt.of(10 * (at + 2));
  }

  /** A Roman numeral from 1 to 39 in small letters. */
  static OptionalInt roman(String word) {
    if (word.isEmpty() || !ROMAN.matcher(word).matches()) {
      return OptionalInt.empty();
    }
    int value = 0;
    for (int at = 0; at < word.length(); at++) {
      int here = value(word.charAt(at));
      boolean subtracted = at + 1 < word.length() && value(word.charAt(at + 1)) > here;
      value += subtracted ? -here : here;
    }
    return OptionalInt.of(value);
  }

  private static int value(char sign) {
    return sign == 'x' ? 10 : sign == 'v' ? 5 : 1;
  }
}
