package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.EmptyPlace;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Shown;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the map says in sentences. Empty means not recorded here; nothing is said of the world.
 *
 * @param outcome the outcome looked at; empty for any
 * @param infected infected at the start, as far as the map is narrowed to it
 */
record MapWords(Optional<Outcome> outcome, List<YesOrNo> infected) {

  /** Such as "Printed scaffold: no study here reports union at a mean or median of ...". */
  String none(EmptyPlace place) {
    Map<String, Object> values = new HashMap<>();
    values.put("method", place.method().shortLabel());
    values.put("sizes", sizes(place.range()));
    outcome.ifPresent(asked -> values.put("outcome", apart(lower(asked.label()))));
    if (infected.isEmpty()) {
      return say(outcome.isEmpty() ? "page.no-study" : "page.no-study-reports", values);
    }
    values.put("start", infected.stream().map(MapWords::start).collect(Collectors.joining(" or ")));
    return say(
        outcome.isEmpty() ? "page.no-study-so-infected" : "page.no-study-so-infected-reports",
        values);
  }

  /** Why one would expect something there, in numbers. */
  static String ground(EmptyPlace place) {
    long ofMethod = place.ofMethod().patients();
    long ofSizes = place.ofSizes();
    int unsized = place.unsized().studies();
    return unsized == 0
        ? say("page.ground-of-gap", Map.of("ofMethod", ofMethod, "ofSizes", ofSizes))
        : say(
            "page.ground-of-gap-but-unsized",
            Map.of("ofMethod", ofMethod, "ofSizes", ofSizes, "unsized", unsized));
  }

  /** Closes a label that holds a comma by another. */
  private static String apart(String label) {
    return label.contains(",") ? label + "," : label;
  }

  /** Abbreviations keep their letters. */
  private static String lower(String label) {
    boolean abbreviation = label.length() > 1 && Character.isUpperCase(label.charAt(1));
    return abbreviation
        ? label
        : label.substring(0, 1).toLowerCase(Locale.ROOT) + label.substring(1);
  }

  private static String start(YesOrNo answer) {
    return switch (answer) {
      case YES -> say("page.all-infected");
      case NO -> say("page.none-infected");
      case MIXED -> say("page.some-infected");
      case UNCLEAR -> say("page.infection-unclear");
    };
  }

  private static String sizes(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return range.fromCentimetres() == 0
          ? say("page.at-any-middle")
          : say("page.at-middle-from", Map.of("from", from));
    }
    String to = Shown.centimetres(range.toCentimetres());
    return range.fromCentimetres() == 0
        ? say("page.at-middle-below", Map.of("to", to))
        : say("page.at-middle-between", Map.of("from", from, "to", to));
  }
}
