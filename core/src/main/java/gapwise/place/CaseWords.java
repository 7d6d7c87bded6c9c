package gapwise.place;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import gapwise.place.MethodPlace.ByLength;
import gapwise.problem.Problem;
import gapwise.selection.Selection;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The place of a case in sentences, rounded so that they say no more than the numbers carry. */
public final class CaseWords {
  /** What must stand beside every place of a case. */
  public static final List<String> WHY_ONE_CASE_PROVES_LITTLE =
      List.of(
          say("place.why-luck"),
          say("place.why-published"),
          say("place.why-averages"),
          say("place.why-clocks"),
          say("place.why-others"));

  /** Fewer series than this tell little of how series differ; common practice, no source. */
  private static final int FIRM = 5;

  private CaseWords() {}

  /** A number with at most one decimal. */
  static String number(double value) {
    BigDecimal tenths = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
    return tenths.stripTrailingZeros().toPlainString();
  }

  /** The milestone with its value and clock: "Union after 9 months, counted from: injury". */
  public static String told(Reached reached) {
    Map<String, String> values = new HashMap<>(values(reached));
    values.put("milestone", reached.milestone().label());
    if (!reached.milestone().isTime()) {
      return say("place.reached-at-cost", values);
    }
    return say(
        values.containsKey("clock") ? "place.reached-after-on-clock" : "place.reached-after",
        values);
  }

  /** When the milestone was reached: "After 9 months, counted from: injury". */
  public static String when(Reached reached) {
    Map<String, String> values = values(reached);
    if (!reached.milestone().isTime()) {
      return say("place.at-cost", values);
    }
    return say(values.containsKey("clock") ? "place.after-on-clock" : "place.after", values);
  }

  /** Time or cost, and the clock unless the milestone has but one. */
  private static Map<String, String> values(Reached reached) {
    if (!reached.milestone().isTime()) {
      return Map.of(
          "amount", Shown.number(reached.value()), "currency", reached.currency().orElse(""));
    }
    String months = months(reached.value());
    return reached.milestone().onlyClock().isPresent() || reached.clock().isEmpty()
        ? Map.of("months", months)
        : Map.of("months", months, "clock", reached.clock().get().label());
  }

  /** Months in words, at most one decimal. */
  public static String months(double months) {
    String shown = number(months);
    return shown.equals(number(1))
        ? say("place.one-month")
        : say("place.months", Map.of("months", shown));
  }

  /** The main sentence of a method, and from how many series it is. */
  public static String sentence(Reached reached, MethodPlace place) {
    if (place.told().isEmpty()) {
      return say(
          "place.too-few-to-say",
          Map.of("series", place.series(), "people", place.people(), "fewest", MethodPlace.FEWEST));
    }
    double below = place.told().getAsDouble();
    Milestone milestone = reached.milestone();
    String name = name(place.method());
    String stands =
        place.length() instanceof ByLength.Adjusted
            ? ShareWords.sentenceByLength(below, milestone, name)
            : ShareWords.sentence(below, milestone, name);
    return stands
        + " "
        + say(
            place.series() < FIRM ? "place.from-few" : "place.from",
            Map.of("series", place.series(), "people", place.people()));
  }

  /** The name within a sentence; one with an aside of its own stands in quotation marks. */
  private static String name(Method method) {
    String label = method.shortLabel();
    return label.contains(",")
        ? say("place.quoted", Map.of("name", label))
        : label.toLowerCase(Locale.ROOT);
  }

  /** A method with too few series for a share, in one phrase. */
  public static String tooFew(Reached reached, MethodPlace place) {
    Comparative less = reached.milestone().less();
    String method = place.method().shortLabel();
    if (place.series() == 1) {
      return say(
          place.seriesBelow() == 1 ? "place.one-series-below" : "place.one-series-not-below",
          Map.of("method", method, "people", place.people(), "than", less.word()));
    }
    return say(
        "place.few-series",
        Map.of(
            "method", method,
            "series", place.series(),
            "people", place.people(),
            "below", place.seriesBelow(),
            "than", less.one()));
  }

  /** What follows the main sentence. */
  public static List<String> further(Reached reached, MethodPlace place) {
    List<String> sentences = new ArrayList<>();
    Comparative less = reached.milestone().less();
    if (place.length() instanceof ByLength.Adjusted adjusted) {
      sentences.add(adjusted(reached.milestone(), place, adjusted));
    } else if (place.length() instanceof ByLength.NotAdjusted not && place.told().isPresent()) {
      sentences.add(not.why());
    }
    sentences.add(
        say(
            "place.series-below",
            Map.of("than", less.word(), "below", place.seriesBelow(), "series", place.series())));
    place
        .patients()
        .ifPresent(
            patients ->
                sentences.add(
                    say(
                        "place.patients-below",
                        Map.of(
                            "patients", patients.all(),
                            "below", patients.below(),
                            "than", less.one()))));
    place
        .unpooled()
        .ifPresent(
            others ->
                sentences.add(
                    say(
                        "place.series-not-pooled",
                        Map.of(
                            "series", others.all(),
                            "below", others.below(),
                            "than", less.word()))));
    if (!place.like().isEmpty() && place.told().isPresent()) {
      sentences.add(place.like());
    }
    return List.copyOf(sentences);
  }

  private static String adjusted(
      Milestone milestone, MethodPlace place, ByLength.Adjusted adjusted) {
    if (place.newBelow().isEmpty()) {
      return say("place.adjusted-only", Map.of("series", adjusted.series()));
    }
    String stands =
        ShareWords.stands(place.newBelow().getAsDouble(), milestone, say("place.of-any-length"));
    return say("place.adjusted", Map.of("series", adjusted.series(), "stands", stands));
  }

  static String tooFewLengths(int known, int series) {
    return say(
        "place.too-few-lengths",
        Map.of("known", known, "series", series, "fewest", MethodPlace.FEWEST_WITH_LENGTH));
  }

  /**
   * @param lengths of the series, rising, at least one
   */
  static String outsideLengths(double centimetres, List<Double> lengths) {
    return say(
        "place.outside-lengths",
        Map.of(
            "length", number(centimetres),
            "shortest", number(lengths.get(0)),
            "longest", number(lengths.get(lengths.size() - 1))));
  }

  static String nothingOnClock(Reached reached, List<Selection.Present> clocks) {
    String start =
        reached
            .clock()
            .map(clock -> say("place.no-series-on-clock", Map.of("clock", clock.label())))
            .orElseGet(() -> say("place.no-cost"));
    return start + " " + otherClocks(reached, clocks).orElseGet(() -> say("place.no-finding"));
  }

  static Optional<String> otherClocks(Reached reached, List<Selection.Present> clocks) {
    String own = reached.clock().map(Coded::code).orElse("");
    List<String> others =
        clocks.stream()
            .filter(present -> !present.code().equals(own))
            .map(
                present ->
                    say(
                        "place.groups-from",
                        Map.of("groups", present.arms(), "clock", present.label())))
            .toList();
    return others.isEmpty()
        ? Optional.empty()
        : Optional.of(say("place.other-clocks", Map.of("clocks", String.join(", ", others))));
  }

  static Problem contradiction(Reached entered, Reached derived) {
    return new Problem(
        entered.milestone().code(),
        "contradicts-course",
        say(
            "place.contradiction",
            Map.of(
                "milestone", entered.milestone().label(),
                "entered", number(entered.value()),
                "derived", number(derived.value()),
                "clock", derived.clock().map(Clock::label).orElse(""))));
  }
}
