package gapwise.printed;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Days and months, and the two numbers that a spreadsheet may have made them of. */
final class Dates {
  /** First letters of months: English, and where they differ German and French. */
  private static final Map<String, Integer> MONTHS =
      Map.ofEntries(
          Map.entry("jan", 1),
          Map.entry("feb", 2),
          Map.entry("fév", 2),
          Map.entry("mar", 3),
          Map.entry("mär", 3),
          Map.entry("mrz", 3),
          Map.entry("apr", 4),
          Map.entry("avr", 4),
          Map.entry("may", 5),
          Map.entry("mai", 5),
          Map.entry("jun", 6),
          Map.entry("jul", 7),
          Map.entry("aug", 8),
          Map.entry("aoû", 8),
          Map.entry("sep", 9),
          Map.entry("oct", 10),
          Map.entry("okt", 10),
          Map.entry("nov", 11),
          Map.entry("dec", 12),
          Map.entry("dez", 12),
          Map.entry("déc", 12));

  private static final String MONTH = "(\\p{L}{3,9})\\.?";
  private static final Pattern DAY_MONTH =
      Pattern.compile("(\\d{1,2})[.]?[ /-]*" + MONTH + "(?:[ /-]*(\\d{2}|\\d{4}))?");
  private static final Pattern MONTH_NUMBER = Pattern.compile(MONTH + "[ /-]*(\\d{1,2}|\\d{4})");
  private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})(?:[T ]00:00.*)?");
  private static final Pattern POINTS = Pattern.compile("(\\d{1,2})[./](\\d{1,2})[./](\\d{4})");

  private Dates() {}

  static Optional<PrintedValue> read(String text) {
    Matcher iso = ISO.matcher(text);
    if (iso.matches()) {
      return dated(number(iso, 3), number(iso, 2), number(iso, 1), true);
    }
    Matcher points = POINTS.matcher(text);
    if (points.matches()) {
      return dated(number(points, 1), number(points, 2), number(points, 3), true);
    }
    Matcher dayFirst = DAY_MONTH.matcher(text);
    if (dayFirst.matches()) {
      return month(dayFirst.group(2))
          .flatMap(
              month ->
                  dated(
                      number(dayFirst, 1),
                      month,
                      dayFirst.group(3) == null ? 0 : number(dayFirst, 3),
                      false));
    }
    Matcher monthFirst = MONTH_NUMBER.matcher(text);
    if (monthFirst.matches()) {
      int number = number(monthFirst, 2);
      return month(monthFirst.group(1))
          .map(
              month ->
                  number > 99
                      ? new PrintedValue.Dated(List.of())
                      : new PrintedValue.Dated(List.of(new PrintedValue.Pair(month, number))));
    }
    return Optional.empty();
  }

  private static int number(Matcher matcher, int group) {
    return Integer.parseInt(matcher.group(group));
  }

  private static Optional<Integer> month(String word) {
    return Optional.ofNullable(MONTHS.get(word.substring(0, 3).toLowerCase(Locale.ROOT)));
  }

  private static Optional<PrintedValue> dated(int day, int month, int year, boolean sorted) {
    if (day < 1 || day > 31 || month < 1 || month > 12) {
      return Optional.empty();
    }
    Set<PrintedValue.Pair> pairs = new LinkedHashSet<>();
    PrintedValue.Pair asWritten = new PrintedValue.Pair(day, month);
    PrintedValue.Pair turned = new PrintedValue.Pair(month, day);
    // The smaller number comes first in ranges and in counts of a total.
    boolean turn = sorted && day > month;
    pairs.add(turn ? turned : asWritten);
    pairs.add(turn ? asWritten : turned);
    if (day == 1 && year > 0) {
      pairs.add(new PrintedValue.Pair(month, year % 100));
    }
    return Optional.of(new PrintedValue.Dated(new ArrayList<>(pairs)));
  }
}
