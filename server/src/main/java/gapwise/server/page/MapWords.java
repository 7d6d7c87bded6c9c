package gapwise.server.page;

import gapwise.answer.EmptyPlace;
import gapwise.evidence.Answer;
import gapwise.evidence.LengthRange;
import gapwise.evidence.Outcome;
import gapwise.figure.Shown;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the map says in sentences. Empty means not recorded here; nothing is said of the world.
 *
 * @param outcome the outcome looked at; empty for any
 * @param infected infected at the start, as far as the map is narrowed to it
 */
record MapWords(Optional<Outcome> outcome, List<Answer> infected) {

  /** Such as "No study here reports union after a printed scaffold above 8 cm". */
  String none(EmptyPlace place) {
    return "No study here reports "
        + what()
        + " after "
        + place.method().label().toLowerCase(Locale.ROOT)
        + sizes(place.range())
        + start();
  }

  /** Why one would expect something there, in numbers. */
  static String ground(EmptyPlace place) {
    String method =
        EvidenceMap.counted(place.ofMethod().patients(), "patient", "patients")
            + " recorded after this method at other sizes";
    String sizes =
        EvidenceMap.counted(place.ofSizes(), "patient", "patients")
            + " of this size after other methods";
    return method + ", " + sizes + ".";
  }

  private String what() {
    return outcome.map(o -> o.label().toLowerCase(Locale.ROOT)).orElse("anything");
  }

  private String start() {
    return infected.isEmpty()
        ? ""
        : ", infected at the start: "
            + infected.stream().map(Answer::label).collect(Collectors.joining(" or "));
  }

  private static String sizes(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() == 0
          ? " with a known middle length of missing bone"
          : " for " + from + " cm and more";
    }
    String to = Shown.centimetres(range.toCentimetres());
    return range.fromCentimetres() == 0
        ? " below " + to + " cm"
        : " for " + from + " to " + to + " cm";
  }
}
