package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.SeriesCount;
import gapwise.selection.SelectedRow;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** How many had an event, all rows together, as a part of a sentence. */
final class PlainCount {
  private static final Set<String> PEOPLE = Set.of("patients", "limbs");

  private PlainCount() {}

  /** "20 of 542 limbs removed later", all rows together; empty for what is measured. */
  static Optional<String> of(Outcome outcome, List<SelectedRow> rows) {
    OptionalInt events = People.events(rows);
    if (events.isEmpty()) {
      return Optional.empty();
    }
    String people = People.of(rows);
    return Optional.of(
        outcome
            .event()
            .map(
                event ->
                    say(
                        "told.count",
                        Map.of(
                            "events", events.getAsInt(),
                            "people", counted(event, rows, people),
                            "such", event.such())))
            .orElseGet(
                () ->
                    say(
                        outcome.kind() == Outcome.Kind.CATEGORIES
                            ? "told.count-good"
                            : "told.count-of-events",
                        Map.of("events", events.getAsInt(), "people", people))));
  }

  /**
   * Everybody or nobody.
   *
   * @param number how many are counted
   */
  static String atLimit(Outcome.Event event, int number, SeriesCount series, boolean everybody) {
    return say(
        everybody ? "told.everybody" : "told.nobody",
        Map.of(
            "number",
            number,
            "counted",
            event.counted(),
            "became",
            event.became(),
            "series",
            series.words()));
  }

  /**
   * Flaps, implants and docking sites by their name, whatever the series count; else the people.
   */
  private static String counted(Outcome.Event event, List<SelectedRow> rows, String people) {
    return PEOPLE.contains(event.counted())
        ? people
        : say("told.counted", Map.of("number", People.number(rows), "counted", event.counted()));
  }
}
