package gapwise.search.words;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.MatchResult;
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

  private static final Pattern ABOVE_ALONE = pattern(ABOVE);

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
              + "(?=f)(?<!\\b(?:maximum|maximal|max|longest|lost to)\\s{1,3})\\b"
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
              + "\\s*)?(?=\\d)"
              + NOT_AFTER
              + NUMBER
              + TIME
              + MORE
              + "\\s*(?:of\\s+)?(?:(?:mean|median|average|minimum)\\s+)?"
              + FOLLOWED);

  /** A reading with its place in the text. */
  record Found(Reading reading, int from, int to) {}

  /** One form of words with what a place that it fits means; empty for what cannot be meant. */
  private record Form(Pattern pattern, Function<MatchResult, Optional<Reading>> meaning) {}

  /** Of forms that begin at one place the first here is taken. */
  private static final List<Form> FORMS =
      List.of(
          new Form(STRETCH, Amounts::stretch),
          new Form(ONE_SIDED, Amounts::oneSided),
          new Form(OPEN, match -> atLeast(match, centimetres(match.group(1), match.group(2)))),
          new Form(ALONE, Amounts::alone),
          new Form(FOLLOWED_FOR, Amounts::followUp),
          new Form(FOR_FOLLOWED, Amounts::followUp),
          new Form(YEARS, Amounts::years),
          new Form(SINCE, Amounts::since));

  private Amounts() {}

  private static Pattern pattern(String regex) {
    return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /**
   * The amounts of a text in their order, none over another. Each form of words goes through the
   * text once, so that the work grows with the length of the text and not with its square; the text
   * must have no more than one space at a time.
   */
  static List<Found> in(CharSequence text) {
    List<Scan> scans = FORMS.stream().map(form -> new Scan(form, text)).toList();
    List<Found> amounts = new ArrayList<>();
    Optional<Found> first = first(scans);
    while (first.isPresent()) {
      amounts.add(first.get());
      int end = first.get().to();
      scans.forEach(scan -> scan.goTo(end));
      first = first(scans);
    }
    return amounts;
  }

  private static Optional<Found> first(List<Scan> scans) {
    Optional<Found> first = Optional.empty();
    for (Scan scan : scans) {
      if (scan.found.isPresent()
          && (first.isEmpty() || scan.found.get().from() < first.get().from())) {
        first = scan.found;
      }
    }
    return first;
  }

  /** One form going through a text, never back. */
  private static final class Scan {
    private final Form form;
    private final Matcher matcher;
    private Optional<Found> found;

    Scan(Form form, CharSequence text) {
      this.form = form;
      this.matcher = form.pattern().matcher(text);
      this.found = next(0);
    }

    /** What begins before the place is left behind. */
    void goTo(int place) {
      if (found.isPresent() && found.get().from() < place) {
        found = next(place);
      }
    }

    private Optional<Found> next(int from) {
      boolean fits = matcher.find(from);
      while (fits) {
        Optional<Reading> meant = form.meaning().apply(matcher);
        if (meant.isPresent()) {
          return Optional.of(new Found(meant.get(), matcher.start(), matcher.end()));
        }
        fits = matcher.find();
      }
      return Optional.empty();
    }
  }

  private static Optional<Reading> stretch(MatchResult match) {
    String unit = match.group(4);
    double one = centimetres(match.group(1), match.group(2) == null ? unit : match.group(2));
    double other = centimetres(match.group(3), unit);
    return Math.max(one, other) <= LONGEST_CENTIMETRES
        ? size(match, Math.min(one, other), Math.max(one, other))
        : Optional.empty();
  }

  private static Optional<Reading> oneSided(MatchResult match) {
    double length = centimetres(match.group(2), match.group(3));
    boolean above = ABOVE_ALONE.matcher(match.group(1)).matches();
    return above ? atLeast(match, length) : size(match, 0, length);
  }

  private static Optional<Reading> atLeast(MatchResult match, double length) {
    return size(match, length, Double.POSITIVE_INFINITY);
  }

  private static Optional<Reading> alone(MatchResult match) {
    double length = centimetres(match.group(1), match.group(2));
    return size(match, length, length);
  }

  private static Optional<Reading> size(MatchResult match, double from, double to) {
    return Optional.of(new Reading.Size(new LengthRange(from, to), match.group().strip()));
  }

  private static Optional<Reading> followUp(MatchResult match) {
    double value = Double.parseDouble(match.group(1).replace(',', '.'));
    double months = time(match.group(2)).to(Unit.MONTHS, value);
    return months <= LONGEST_MONTHS
        ? Optional.of(new Reading.FollowUp(months, match.group().strip()))
        : Optional.empty();
  }

  private static Unit time(String unit) {
    return switch (unit.toLowerCase(Locale.ROOT).charAt(0)) {
      case 'w' -> Unit.WEEKS;
      case 'y' -> Unit.YEARS;
      default -> Unit.MONTHS;
    };
  }

  private static Optional<Reading> years(MatchResult match) {
    int one = Integer.parseInt(match.group(1));
    int other = Integer.parseInt(match.group(2));
    return years(match, OptionalInt.of(Math.min(one, other)), OptionalInt.of(Math.max(one, other)));
  }

  private static Optional<Reading> since(MatchResult match) {
    int year = Integer.parseInt(match.group(2));
    return switch (match.group(1).toLowerCase(Locale.ROOT)) {
      case "after" -> years(match, OptionalInt.of(year + 1), OptionalInt.empty());
      case "before" -> years(match, OptionalInt.empty(), OptionalInt.of(year - 1));
      case "until" -> years(match, OptionalInt.empty(), OptionalInt.of(year));
      default -> years(match, OptionalInt.of(year), OptionalInt.empty());
    };
  }

  private static Optional<Reading> years(MatchResult match, OptionalInt from, OptionalInt to) {
    return Optional.of(new Reading.Years(from, to, match.group().strip()));
  }

  private static double centimetres(String number, String unit) {
    double value = Double.parseDouble(number.replace(',', '.'));
    return unit.toLowerCase(Locale.ROOT).startsWith("m") ? value / 10 : value;
  }
}
