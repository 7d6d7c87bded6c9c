package gapwise.printed;

import gapwise.evidence.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the words above or beside numbers say of them, such as "weeks, median (IQR)" or "n/N".
 *
 * @param statistics what the numbers are, in the order of the words
 * @param unit in which they are; empty where no unit is named or several are
 * @param timePoint when they were observed: "at 24 months"
 * @param rest the words that say neither, in small letters: what is measured
 */
public record Said(
    List<Statistic> statistics,
    Optional<Unit> unit,
    Optional<TimePoint> timePoint,
    List<String> rest) {
  /** Longer words are no header. */
  private static final int LONGEST = 300;

  /** Nothing is said. */
  public static final Said NOTHING =
      new Said(List.of(), Optional.empty(), Optional.empty(), List.of());

  private static final Pattern COUNT_OF_TOTAL =
      Pattern.compile("(?<![\\p{L}])n ?/ ?n(?![\\p{L}])|\\bn of n\\b");
  private static final Pattern TIME_POINT =
      Pattern.compile(
          "(?:\\b(?:at|after|by)\\s+)?(\\d+(?:[.,]\\d+)?)[ -]?(hours?|days?|d|weeks?|wks?|months?|mos?|mths?|years?|yrs?|y)\\b\\.?(?:\\s+(?:follow-?up|fu))?");
  private static final Pattern STANDARD = Pattern.compile("standard (deviation|error)");
  private static final Pattern LEVEL =
      Pattern.compile("\\d{2}(?:\\.\\d)? ?% ?(?=ci\\b|confidence)");
  private static final Pattern QUARTILES =
      Pattern.compile(
          "\\bq1 ?[-,;–] ?q3\\b|\\b25(?:th)? ?[-–] ?75(?:th)?\\b|interquartile range|inter-quartile range");
  private static final Pattern LIMITS =
      Pattern.compile("\\bmin(?:imum)?\\.? ?(?:[-–,;/]|to|and) ?max(?:imum)?\\b\\.?");
  private static final Pattern NUMBER_OF =
      Pattern.compile(
          "\\b(?:no\\.?|nr\\.?|number|num\\.?|anzahl|nombre)(?: of\\b| der\\b| de\\b)|#|\\bno\\.");
  private static final Pattern PER_LENGTH =
      Pattern.compile("\\b(d|days?|wk|weeks?|mo|months?) ?(?:/|per) ?(cm|mm)\\b");

  /** "Age/y", "loss/cm": what stands after the bar is the unit. */
  private static final Pattern UNIT_AFTER_BAR =
      Pattern.compile(
          "(?<![\\p{L}])(?!(?:d|days?|wk|weeks?|mo|months?) ?/)([\\p{L}-]{2,}) ?/ ?"
              + "(y|yrs?|years?|cm|mm|mo|months?|wks?|weeks?|d|days?)\\b");

  private static final Pattern WORD =
      Pattern.compile("[\\p{L}][\\p{L}0-9'-]*(?:/(?:cm|mm))?|%|±|\\(|\\)|\\[|\\]|,|;|:|\\d+");

  /** How long after the start. */
  public record TimePoint(double value, Unit unit) {}

  public Said {
    statistics = List.copyOf(statistics);
    rest = List.copyOf(rest);
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(timePoint, "timePoint");
  }

  /** Reads the words of a header; several cells of one header are joined by a comma before. */
  public static Said read(String words) {
    if (words.length() > LONGEST) {
      return NOTHING;
    }
    String text = Printed.plain(words).toLowerCase(Locale.ROOT);
    return new Reading().read(text);
  }

  /** Whether a word says this. */
  public boolean says(Statistic statistic) {
    return statistics.contains(statistic);
  }

  /** Both together, what is said here first. */
  public Said and(Said other) {
    List<Statistic> both = new ArrayList<>(statistics);
    other.statistics.stream().filter(one -> !both.contains(one)).forEach(both::add);
    List<String> words = new ArrayList<>(rest);
    words.addAll(other.rest);
    return new Said(both, unit.or(() -> other.unit), timePoint.or(() -> other.timePoint), words);
  }

  /** The one of these that is said; empty where none or several are. */
  Optional<Statistic> one(Statistic... of) {
    List<Statistic> found = statistics.stream().filter(List.of(of)::contains).toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }

  /** One reading of a header under way. */
  private static final class Reading {
    private final List<Statistic> statistics = new ArrayList<>();
    private final List<Unit> units = new ArrayList<>();
    private final List<String> rest = new ArrayList<>();
    private Optional<TimePoint> timePoint = Optional.empty();
    private int brackets;
    private boolean afterComma;

    Said read(String header) {
      String text = LEVEL.matcher(header).replaceAll(" ");
      text = QUARTILES.matcher(text).replaceAll(" iqr ");
      text = LIMITS.matcher(text).replaceAll(" range ");
      text =
          STANDARD
              .matcher(text)
              .replaceAll(found -> found.group(1).equals("error") ? " se " : " sd ");
      text = PER_LENGTH.matcher(text).replaceAll(found -> found.group(1) + "/" + found.group(2));
      text = UNIT_AFTER_BAR.matcher(text).replaceAll("$1 ($2)");
      text = COUNT_OF_TOTAL.matcher(text).replaceAll(" number total ");
      text = NUMBER_OF.matcher(text).replaceAll(" number ");
      text = timePoint(text);
      Matcher words = WORD.matcher(text);
      while (words.find()) {
        take(words.group(), text);
      }
      List<Unit> distinct = units.stream().distinct().toList();
      return new Said(
          statistics,
          distinct.size() == 1 ? Optional.of(distinct.get(0)) : Optional.empty(),
          timePoint,
          rest);
    }

    private String timePoint(String text) {
      Matcher found = TIME_POINT.matcher(text);
      if (!found.find()) {
        return text;
      }
      timePoint =
          Lexicon.unit(found.group(2).replaceAll("\\.$", ""))
              .map(
                  unit ->
                      new TimePoint(Double.parseDouble(found.group(1).replace(',', '.')), unit));
      return text.substring(0, found.start()) + " " + text.substring(found.end());
    }

    private void take(String word, String whole) {
      switch (word) {
        case "(", "[" -> brackets++;
        case ")", "]" -> brackets = Math.max(0, brackets - 1);
        case ",", ";", ":" -> afterComma = true;
        case "%" -> add(Statistic.PERCENT);
        case "±" -> {}
        default -> word(word, whole.strip().equals(word));
      }
    }

    private void word(String word, boolean alone) {
      boolean apart = brackets > 0 || afterComma;
      Optional<Statistic> statistic =
          word.equals("of") || word.equals("no") ? Optional.empty() : Lexicon.statistic(word);
      Optional<Unit> unit = Lexicon.unit(word);
      // A letter alone is a unit only where units stand; "year" by itself is a calendar year.
      boolean isUnit =
          unit.isPresent()
              && (apart
                  || (word.length() > 1
                      && !word.equals("year")
                      && (!alone || !word.equals("years"))));
      boolean minutes = word.equals("min") && apart && statistics.isEmpty();
      if (isUnit && (statistic.isEmpty() || minutes)) {
        units.add(unit.get());
      } else if (statistic.isPresent()) {
        add(statistic.get());
      } else {
        rest.add(word);
      }
    }

    private void add(Statistic statistic) {
      if (!statistics.contains(statistic)) {
        statistics.add(statistic);
      }
    }
  }
}
