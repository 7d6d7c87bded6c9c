package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.ReportedValue;
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
   * The same with the number of series: "20 of 542 limbs removed later, in 13 series", "none of 30
   * limbs were removed later, in 2 series".
   */
  static Optional<String> inSeries(Outcome outcome, List<SelectedRow> rows) {
    OptionalInt events = People.events(rows);
    boolean everybody = events.isPresent() && isEverybody(rows, events.getAsInt());
    if (everybody || events.equals(OptionalInt.of(0))) {
      return Optional.of(atLimit(outcome, rows, everybody));
    }
    return of(outcome, rows)
        .map(
            count ->
                say(
                    "told.counted-in",
                    Map.of("count", count, "series", People.series(rows).words())));
  }

  /** Of what one patient can have several there is no number that is that of all. */
  private static boolean isEverybody(List<SelectedRow> rows, int events) {
    return events == People.number(rows)
        && rows.stream().noneMatch(row -> row.value() instanceof ReportedValue.Tally);
  }

  /** Whether all or none of those counted had the event. */
  static boolean isAtLimit(List<SelectedRow> rows) {
    OptionalInt events = People.events(rows);
    return events.isPresent() && (events.getAsInt() == 0 || isEverybody(rows, events.getAsInt()));
  }

  /** Everybody or nobody: the number is of what the outcome counts, whatever the series count. */
  static String atLimit(Outcome outcome, List<SelectedRow> rows, boolean everybody) {
    SeriesCount series = People.series(rows);
    if (rows.stream().anyMatch(row -> row.value() instanceof ReportedValue.Tally)) {
      return say(
          "told.without-events", Map.of("people", People.of(rows), "series", series.words()));
    }
    return outcome
        .event()
        .map(event -> atLimit(event, People.number(rows), series, everybody))
        .orElseGet(
            () ->
                say(
                    everybody ? "told.everybody-good" : "told.nobody-good",
                    Map.of("people", People.of(rows), "series", series.words())));
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
