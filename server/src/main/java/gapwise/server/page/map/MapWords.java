package gapwise.server.page.map;

import gapwise.answer.EmptyPlace;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Shown;
import gapwise.sentence.Counted;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the map says in sentences. Empty means not recorded here; nothing is said of the world.
 *
 * @param outcome the outcome looked at; empty for any
 * @param infected infected at the start, as far as the map is narrowed to it
 */
record MapWords(Optional<Outcome> outcome, List<YesOrNo> infected) {

  /** Such as "Printed scaffold: no study here reports union at a mean or median of ...". */
  String none(EmptyPlace place) {
    return place.method().shortLabel()
        + ": no study here"
        + outcome.map(asked -> " reports " + apart(lower(asked.label()))).orElse("")
        + sizes(place.range())
        + start()
        + ".";
  }

  /** Why one would expect something there, in numbers. */
  static String ground(EmptyPlace place) {
    String method =
        Counted.of(place.ofMethod().patients(), "patient", "patients")
            + " recorded after this method in all";
    String sizes =
        Counted.of(place.ofSizes(), "patient", "patients") + " of this size after any method";
    return method + ", " + sizes + unsized(place.unsized().studies());
  }

  /** Closes a label that holds a comma by another. */
  private static String apart(String label) {
    return label.contains(",") ? label + "," : label;
  }

  private static String unsized(int studies) {
    if (studies == 0) {
      return "";
    }
    String give = studies == 1 ? " gives" : " give";
    return "; " + Counted.of(studies, "study", "studies") + give + " no middle length";
  }

  /** Abbreviations keep their letters. */
  private static String lower(String label) {
    boolean abbreviation = label.length() > 1 && Character.isUpperCase(label.charAt(1));
    return abbreviation
        ? label
        : label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1);
  }

  private String start() {
    List<String> words = infected.stream().map(MapWords::start).toList();
    return words.isEmpty() ? "" : ", " + String.join(" or ", words);
  }

  private static String start(YesOrNo answer) {
    return switch (answer) {
      case YES -> "all infected at the start";
      case NO -> "none infected at the start";
      case MIXED -> "some infected at the start";
      case UNCLEAR -> "infection at the start unclear";
    };
  }

  private static String sizes(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() == 0
          ? " with a known mean or median of missing bone"
          : " at a mean or median of " + from + " cm and more";
    }
    String to = Shown.centimetres(range.toCentimetres());
    return range.fromCentimetres() == 0
        ? " at a mean or median below " + to + " cm"
        : " at a mean or median of " + from + " to " + to + " cm";
  }
}
