package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The settings that a result says it was made with: its plan, every default filled in.
 *
 * @param plan as the result holds it; not to be changed
 */
record Settings(ObjectNode plan) {
  /** From a million million on, and below its reciprocal, nobody counts digits; our choice. */
  private static final int MOST_DIGITS = 12;

  /** Whether a field is there. */
  boolean has(String field) {
    return plan.has(field);
  }

  /** The word of a field; empty text without it. */
  String word(String field) {
    return plan.path(field).asText();
  }

  /** Whether a field has this word. */
  boolean is(String field, String word) {
    return word(field).equals(word);
  }

  /** Whether a yes or no is yes. */
  boolean flag(String field) {
    return plan.path(field).asBoolean();
  }

  /** A part of the plan. */
  JsonNode part(String field) {
    return plan.path(field);
  }

  /** The number of a field, as people write it. */
  String number(String field) {
    return number(plan.path(field));
  }

  /** The words of a list. */
  List<String> words(String field) {
    List<String> words = new ArrayList<>();
    plan.path(field).forEach(one -> words.add(one.asText()));
    return words;
  }

  /** The numbers of a list, as people write them. */
  static String numbers(JsonNode list) {
    return join(list.valueStream().map(Settings::number));
  }

  /** Several things after one another. */
  static String join(Stream<String> things) {
    return things.collect(Collectors.joining(", "));
  }

  /** Several things that may themselves have commas. */
  static String joinLong(Stream<String> things) {
    return things.collect(Collectors.joining("; "));
  }

  /** The level of intervals in percent. */
  String percent() {
    return percent(plan.path("level"));
  }

  /** A share, 0 to 1, in percent and without rounding. */
  static String percent(JsonNode share) {
    return plain(share.decimalValue().movePointRight(2));
  }

  /** What is left of a share to 1, in percent. */
  static String restPercent(JsonNode share) {
    return plain(BigDecimal.ONE.subtract(share.decimalValue()).movePointRight(2));
  }

  /** A number with all its digits. */
  static String number(JsonNode number) {
    return plain(number.decimalValue());
  }

  /** A number with all its digits. */
  static String number(double number) {
    return plain(BigDecimal.valueOf(number));
  }

  private static String plain(BigDecimal number) {
    BigDecimal least = number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
    boolean far = Math.abs(least.precision() - least.scale()) > MOST_DIGITS;
    return far ? least.toString() : least.toPlainString();
  }
}
