package gapwise.place;

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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The place of a case in sentences, rounded so that they say no more than the numbers carry. */
public final class CaseWords {
  /** What must stand beside every place of a case. */
  public static final List<String> WHY_ONE_CASE_PROVES_LITTLE =
      List.of(
          "One case proves little. A surprising course is mostly luck on top of skill: the next"
              + " patient treated the same way will tend back to the average (regression to the"
              + " mean).",
          "Good courses get told and published, bad ones less often: both this case and the series"
              + " may have been picked for how they ended.",
          "A series reports an average. Single patients scatter far more widely than averages do,"
              + " so a case can lie beyond nearly all series and still be an ordinary patient.",
          "Months in a frame are not months to weight bearing, and weeks after the graft are not"
              + " weeks after the injury. Times are held only against series that count from the"
              + " same moment.",
          "The patients were others: length of bone loss, infection, soft tissue, age and the"
              + " hospital differ. Only length is adjusted for, and only where it says so.");

  /** Fewer series than this tell little of how series differ; common practice, no source. */
  private static final int FIRM = 5;

  private CaseWords() {}

  /** A number with at most one decimal. */
  static String number(double value) {
    BigDecimal tenths = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
    return tenths.stripTrailingZeros().toPlainString();
  }

  /** The milestone with its value and clock: "Union at 9 months from frame put on". */
  public static String told(Reached reached) {
    if (!reached.milestone().isTime()) {
      return reached.milestone().label()
          + " of "
          + Shown.number(reached.value())
          + " "
          + reached.currency().orElse("");
    }
    String from =
        reached.milestone() == Milestone.FRAME_OFF
            ? ""
            : reached.clock().map(clock -> ", counted from: " + clock.label()).orElse("");
    return reached.milestone().label() + " after " + months(reached.value()) + from;
  }

  /** When the milestone was reached: "After 9 months, counted from: injury". */
  public static String when(Reached reached) {
    String told = told(reached).substring(reached.milestone().label().length()).strip();
    return Character.toUpperCase(told.charAt(0)) + told.substring(1);
  }

  /** Months in words, at most one decimal. */
  public static String months(double months) {
    String shown = number(months);
    return shown + (shown.equals("1") ? " month" : " months");
  }

  /** The main sentence of a method. */
  public static String sentence(Reached reached, MethodPlace place) {
    String loosely = place.series() < FIRM ? ", which pin such a share down only loosely" : "";
    String from = " From " + place.series() + " series, " + place.people() + loosely + ".";
    if (place.told().isEmpty()) {
      return "Too few to say: "
          + place.series()
          + " series with "
          + place.people()
          + "; a share of new series takes at least "
          + MethodPlace.FEWEST
          + ".";
    }
    Milestone milestone = reached.milestone();
    String stands = ShareWords.stands(place.told().getAsDouble(), milestone, name(place.method()));
    String adjusted =
        place.length() instanceof ByLength.Adjusted ? " with as long a defect on average" : "";
    return Character.toUpperCase(stands.charAt(0)) + stands.substring(1) + adjusted + "." + from;
  }

  /** The name within a sentence; one with an aside of its own stands in quotation marks. */
  private static String name(Method method) {
    String label = method.shortLabel();
    return label.contains(",") ? "\u201c" + label + "\u201d" : label.toLowerCase(Locale.ROOT);
  }

  /** A method with too few series for a share, in one phrase. */
  public static String tooFew(Reached reached, MethodPlace place) {
    String counted =
        place.series() == 1
            ? (place.seriesBelow() == 1 ? "its average was " : "its average was not ")
                + reached.milestone().less()
            : place.seriesBelow()
                + " of them with a"
                + (reached.milestone().less().matches("[aeiou].*") ? "n " : " ")
                + reached.milestone().less()
                + " average";
    return place.method().shortLabel()
        + ": "
        + place.series()
        + " series, "
        + place.people()
        + ", "
        + counted;
  }

  /** What follows the main sentence. */
  public static List<String> further(Reached reached, MethodPlace place) {
    List<String> sentences = new ArrayList<>();
    Milestone milestone = reached.milestone();
    if (place.length() instanceof ByLength.Adjusted adjusted) {
      sentences.add(
          "Adjusted for length by a line through "
              + adjusted.series()
              + " series, which are averages and no patients; without regard to length: "
              + place.newBelow().stream()
                  .mapToObj(below -> ShareWords.stands(below, milestone, "any length"))
                  .findFirst()
                  .orElse("too few to say")
              + ".");
    } else if (place.length() instanceof ByLength.NotAdjusted not && place.told().isPresent()) {
      sentences.add(not.why());
    }
    sentences.add(
        "Series whose own average was "
            + milestone.less()
            + ": "
            + place.seriesBelow()
            + " of "
            + place.series()
            + ".");
    place
        .patients()
        .ifPresent(
            patients ->
                sentences.add(
                    "Of the "
                        + patients.all()
                        + " patients reported one by one, "
                        + patients.below()
                        + " had a "
                        + milestone.less()
                        + " time."));
    place
        .unpooled()
        .ifPresent(
            others ->
                sentences.add(
                    "A further "
                        + others.all()
                        + " series "
                        + (others.all() == 1 ? "gives" : "give")
                        + " a value without what pooling needs (no spread or number of patients), "
                        + others.below()
                        + " of them "
                        + milestone.less()
                        + "."));
    if (!place.like().isEmpty() && place.told().isPresent()) {
      sentences.add(place.like());
    }
    return List.copyOf(sentences);
  }

  static String tooFewLengths(int known, int series) {
    return "Not adjusted for the length of missing bone: "
        + known
        + " of "
        + series
        + " series give one, and a line takes "
        + MethodPlace.FEWEST_WITH_LENGTH
        + ".";
  }

  /**
   * @param lengths of the series, rising, at least one
   */
  static String outsideLengths(double centimetres, List<Double> lengths) {
    return "Not adjusted for the length of missing bone: "
        + number(centimetres)
        + " cm lies outside the averages of these series, "
        + number(lengths.get(0))
        + " to "
        + number(lengths.get(lengths.size() - 1))
        + " cm.";
  }

  static String nothingOnClock(Reached reached, List<Selection.Present> clocks) {
    String start =
        reached.clock().isEmpty()
            ? "No series of five or more patients reports a cost."
            : "No series of five or more patients counts this from the same moment ("
                + reached.clock().get().label()
                + ").";
    return otherClocks(reached, clocks)
        .map(others -> start + " " + others)
        .orElse(start + " That is no finding about the case or a method.");
  }

  static Optional<String> otherClocks(Reached reached, List<Selection.Present> clocks) {
    String own = reached.clock().map(Coded::code).orElse("");
    List<Selection.Present> others =
        clocks.stream().filter(present -> !present.code().equals(own)).toList();
    if (others.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "Groups that count from another moment are not compared: "
            + others.stream()
                .map(present -> present.arms() + " from " + present.label())
                .collect(Collectors.joining(", "))
            + ".");
  }

  static Problem contradiction(Reached entered, Reached derived) {
    return new Problem(
        entered.milestone().code(),
        "contradicts-course",
        entered.milestone().label()
            + ": "
            + number(entered.value())
            + " months are entered, the phases give "
            + number(derived.value())
            + " from the same moment ("
            + derived.clock().map(Clock::label).orElse("")
            + "). The time entered is taken; check which is right.");
  }
}
