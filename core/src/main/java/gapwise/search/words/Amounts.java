package gapwise.search.words;

import gapwise.evidence.LengthRange;
import gapwise.evidence.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths and follow-up with their unit, and years, in plain words. A length without a unit is not
 * guessed: "6" may be a grade, a month or a number of patients.
 */
final class Amounts {
  private static final double LONGEST_CENTIMETRES = 1000;
  private static final String NUMBER = "(\\d{1,4}(?:[.,]\\d{1,3})?)";
  private static final String UNIT =
      "\\s*(cms?|mms?|centim(?:et(?:re|er)s?)?|millim(?:et(?:re|er)s?)?)";
  private static final String WHAT =
      "(?:\\s+(?:segmental\\s+)?(?:bone\\s+)?(?:defects?|gaps?|loss|missing)\\b)?";
  private static final String DASH = "\\s*(?:-|\u2013|\u2014|\\bto\\b|\\band\\b)\\s*";
  private static final String ABOVE =
      "(?:over|above|more than|longer than|at least|from|>=?|\u2265)";
  private static final String BELOW =
      "(?:under|below|less than|shorter than|up to|at most|<=?|\u2264)";

  private static final String MORE = "(?:\\s*(?:\\+|(?:or|and) (?:more|longer|over|above)\\b))?";

  private static final Pattern STRETCH =
      pattern(
          "(?:between\\s+)?" + NUMBER + "(?:" + UNIT + ")?" + DASH + NUMBER + UNIT + "\\b" + WHAT);
  private static final Pattern ONE_SIDED =
      pattern("(" + ABOVE + "|" + BELOW + ")\\s*" + NUMBER + UNIT + "\\b" + WHAT);
  private static final Pattern OPEN =
      pattern(NUMBER + UNIT + "\\s*(?:\\+|(?:or|and) (?:more|longer|over|above))" + WHAT);
  private static final Pattern ALONE = pattern(NUMBER + UNIT + "\\b" + WHAT);
  private static final Pattern YEARS =
      pattern("(?:between\\s+|from\\s+)?\\b((?:19|20)\\d\\d)" + DASH + "((?:19|20)\\d\\d)\\b");
  private static final Pattern SINCE =
      pattern("\\b(since|from|after|before|until)\\s+((?:19|20)\\d\\d)\\b");

  private static final double LONGEST_MONTHS = 1200;
  private static final String TIME =
      "\\s*-?\\s*(weeks?|wks?|months?|mths?|mos?|years?|yrs?|y)\\b['\u2019]?";
  private static final String FOLLOWED = "(?:follow(?:ed|ing)?(?:\\s*-?\\s*up)?|fu)\\b";

  /** Neither the end of a stretch nor of a longer number, nor what a follow-up must stay below. */
  private static final String NOT_AFTER =
      "(?<![\\d.,\u2013\u2014-])(?<!\\d\\s{0,3}(?:[\u2013\u2014-]|to|and)\\s{0,3})"
          + "(?<!\\b(?:under|below|less than|shorter than|up to|at most|within|before|no more than"
          + "|not more than|maximum|maximal|max|longest)\\s{0,3}(?:of\\s{0,3})?)"
          + "(?<![<\u2264]=?\\s{0,3})";

  /** Neither the begin of a stretch nor followed by "or less". */
  private static final String NOT_BEFORE =
      "(?!\\s*(?:[\u2013\u2014-]|to\\b|and\\b)\\s*\\d)(?!\\s*(?:or|and)\\s+(?:less|shorter|under|below))";

  /** "No more than" is no "more than". */
  private static final String LEAST = "(?:(?<!\\b(?:no|not)\\s{1,3})" + ABOVE + ")?";

  private static final Pattern FOLLOWED_FOR =
      pattern(
          "(?:(?:mean|median|average|minimum)\\s+)?"
              + "(?<!\\b(?:maximum|maximal|max|longest|lost to)\\s{1,3})\\b"
              + FOLLOWED
              + "\\s*(?:of\\s+|for\\s+)?"
              + LEAST
              + "\\s*"
              + NUMBER
              + TIME
              + NOT_BEFORE
              + MORE);
  private static final Pattern FOR_FOLLOWED =
      pattern(
          "(?:(?<!\\p{L})"
              + LEAST
              + "\\s*)?"
              + NOT_AFTER
              + NUMBER
              + TIME
              + MORE
              + "\\s*(?:of\\s+)?(?:(?:mean|median|average|minimum)\\s+)?"
              + FOLLOWED);

  /** A reading with its place in the text. */
  record Found(Reading reading, int from, int to) {}

  private Amounts() {}

  private static Pattern pattern(String regex) {
    return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /** The first amount in a text; of those that begin together the longest form of words. */
  static Optional<Found> firstIn(String text) {
    Optional<Found> first = Optional.empty();
    for (Optional<Found> found :
        List.of(
            stretch(text),
            oneSided(text),
            open(text),
            alone(text),
            followUp(text, FOLLOWED_FOR),
            followUp(text, FOR_FOLLOWED),
            years(text),
            since(text))) {
      if (found.isPresent() && (first.isEmpty() || found.get().from() < first.get().from())) {
        first = found;
      }
    }
    return first;
  }

  private static Optional<Found> stretch(String text) {
    Matcher match = STRETCH.matcher(text);
    while (match.find()) {
      String unit = match.group(4);
      double one = centimetres(match.group(1), match.group(2) == null ? unit : match.group(2));
      double other = centimetres(match.group(3), unit);
      if (Math.max(one, other) <= LONGEST_CENTIMETRES) {
        return size(match, Math.min(one, other), Math.max(one, other));
      }
    }
    return Optional.empty();
  }

  private static Optional<Found> oneSided(String text) {
    Matcher match = ONE_SIDED.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    double length = centimetres(match.group(2), match.group(3));
    boolean above = pattern(ABOVE).matcher(match.group(1)).matches();
    return above ? size(match, length, Double.POSITIVE_INFINITY) : size(match, 0, length);
  }

  private static Optional<Found> open(String text) {
    Matcher match = OPEN.matcher(text);
    return match.find()
        ? size(match, centimetres(match.group(1), match.group(2)), Double.POSITIVE_INFINITY)
        : Optional.empty();
  }

  private static Optional<Found> alone(String text) {
    Matcher match = ALONE.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    double length = centimetres(match.group(1), match.group(2));
    return size(match, length, length);
  }

  private static Optional<Found> size(Matcher match, double from, double to) {
    return Optional.of(
        new Found(
            new Reading.Size(new LengthRange(from, to), match.group().strip()),
            match.start(),
            match.end()));
  }

  private static Optional<Found> followUp(String text, Pattern pattern) {
    Matcher match = pattern.matcher(text);
    while (match.find()) {
      double value = Double.parseDouble(match.group(1).replace(',', '.'));
      double months = time(match.group(2)).to(Unit.MONTHS, value);
      if (months <= LONGEST_MONTHS) {
        return Optional.of(
            new Found(
                new Reading.FollowUp(months, match.group().strip()), match.start(), match.end()));
      }
    }
    return Optional.empty();
  }

  private static Unit time(String unit) {
    return switch (unit.toLowerCase(Locale.ROOT).charAt(0)) {
      case 'w' -> Unit.WEEKS;
      case 'y' -> Unit.YEARS;
      default -> Unit.MONTHS;
    };
  }

  private static Optional<Found> years(String text) {
    Matcher match = YEARS.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    int one = Integer.parseInt(match.group(1));
    int other = Integer.parseInt(match.group(2));
    return years(match, OptionalInt.of(Math.min(one, other)), OptionalInt.of(Math.max(one, other)));
  }

  private static Optional<Found> since(String text) {
    Matcher match = SINCE.matcher(text);
    if (!match.find()) {
      return Optional.empty();
    }
    int year = Integer.parseInt(match.group(2));
    return switch (match.group(1).toLowerCase(Locale.ROOT)) {
      case "after" -> years(match, OptionalInt.of(year + 1), OptionalInt.empty());
      case "before" -> years(match, OptionalInt.empty(), OptionalInt.of(year - 1));
      case "until" -> years(match, OptionalInt.empty(), OptionalInt.of(year));
      default -> years(match, OptionalInt.of(year), OptionalInt.empty());
    };
  }

  private static Optional<Found> years(Matcher match, OptionalInt from, OptionalInt to) {
    return Optional.of(
        new Found(new Reading.Years(from, to, match.group().strip()), match.start(), match.end()));
  }

  private static double centimetres(String number, String unit) {
    double value = Double.parseDouble(number.replace(',', '.'));
    return unit.toLowerCase(Locale.ROOT).startsWith("m") ? value / 10 : value;
  }
}
