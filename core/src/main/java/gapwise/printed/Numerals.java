package gapwise.printed;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Numbers written in words, as titles and sentences have them, or as Roman numerals. */
public final class Numerals {
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

  /** So that "seventeen" is not read as "seven". */
  private static final Comparator<String> LONGEST_FIRST =
      Comparator.comparingInt(String::length).reversed();

  /** Up to 39, the form that counts one to three of a sign and then subtracts. */
  private static final Pattern ROMAN = Pattern.compile("(x{0,3})(ix|iv|v?i{0,3})");

  /** What stands before the rest of a larger number: "one hundred and four" is not four. */
  private static final String OF_MORE =
      "(?<!hundred )(?<!hundred and )(?<!thousand )(?<!thousand and )";

  private static final String WORD =
      "(?:"
          + String.join("|", TENS)
          + ")(?:[- ](?:"
          + String.join("|", UNITS.subList(1, 10))
          + "))?|"
          + String.join(
              "|", UNITS.subList(1, UNITS.size()).stream().sorted(LONGEST_FIRST).toList());

  /**
   * The start of a pattern, without regard to case, whose one group is a count: digits up to 9999,
   * or words from one to ninety-nine that are no part of a larger number.
   */
  public static final String COUNT =
      "(?i)(?<![-\\p{L}\\d.,])" + OF_MORE + "([0-9]{1,4}|" + WORD + ")";

  private Numerals() {}

  /** The number that a group of {@link #COUNT} stands for; empty for other texts. */
  public static OptionalInt count(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    if (lower.matches("[0-9]{1,4}")) {
      return OptionalInt.of(Integer.parseInt(lower));
    }
    String[] parts = lower.split("[- ]", 2);
    OptionalInt tens = tens(parts[0]);
    if (tens.isEmpty()) {
      return parts.length == 1 ? unit(lower) : OptionalInt.empty();
    }
    OptionalInt unit = parts.length == 1 ? OptionalInt.of(0) : unit(parts[1]);
    return unit.isEmpty() || unit.getAsInt() > 9
        ? OptionalInt.empty()
        : OptionalInt.of(tens.getAsInt() + unit.getAsInt());
  }

  /** A number of one word, 0 to 19. */
  public static OptionalInt unit(String word) {
    int at = UNITS.indexOf(word);
    return at < 0 ? OptionalInt.empty() : OptionalInt.of(at);
  }

  /** Full tens from twenty to ninety. */
  public static OptionalInt tens(String word) {
    int at = TENS.indexOf(word);
    return at < 0 ? OptionalInt.empty() : OptionalInt.of(10 * (at + 2));
  }

  /** A Roman numeral from 1 to 39 in small letters. */
  public static OptionalInt roman(String word) {
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
