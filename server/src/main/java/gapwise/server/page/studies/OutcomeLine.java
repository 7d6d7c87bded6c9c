package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.Standing;
import gapwise.wording.FollowUps;
import gapwise.wording.Moneys;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One reported number of a study.
 *
 * @param outcome of what
 * @param value the numbers
 * @param notes what must be known to read them
 * @param followed how many were followed; empty where the paper does not say
 * @param place where in the paper
 * @param words the paper's words
 * @param readings where single numbers stand on its pages
 */
public record OutcomeLine(
    Outcome outcome,
    Values value,
    String notes,
    String followed,
    String place,
    String words,
    List<ReadAt> readings) {
  public OutcomeLine {
    readings = List.copyOf(readings);
  }

  static OutcomeLine of(OutcomeReport report) {
    return new OutcomeLine(
        report.outcome(),
        Values.asReported(report.value()),
        String.join("; ", notes(report)),
        report.followed().isPresent()
            ? say("studies.followed", Map.of("people", report.followed().getAsInt()))
            : "",
        report.provenance().place().orElse(""),
        report.provenance().words().orElse(""),
        ReadAt.of(report.provenance()));
  }

  private static List<String> notes(OutcomeReport report) {
    List<String> notes = new ArrayList<>();
    report
        .subgroup()
        .ifPresent(part -> notes.add(say("studies.only-part", Map.of("part", part.words()))));
    report.phase().map(Phase::label).ifPresent(notes::add);
    report
        .clock()
        .map(Clock::label)
        .ifPresent(clock -> notes.add(say("studies.counted-from", Map.of("clock", clock))));
    report
        .timePoint()
        .ifPresent(time -> notes.add(say("studies.at-time", Map.of("time", months(time)))));
    report
        .counted()
        .map(CountedUnit::label)
        .ifPresent(unit -> notes.add(say("studies.counts-of", Map.of("unit", unit))));
    report.money().map(Moneys::words).ifPresent(notes::add);
    report.test().ifPresent(test -> notes.add(say("studies.test-printed", Map.of("test", test))));
    Optional.of(report.standing())
        .filter(standing -> standing != Standing.COUNTS)
        .map(Standing::label)
        .ifPresent(notes::add);
    report
        .definition()
        .ifPresent(text -> notes.add(say("studies.defined-as", Map.of("definition", text))));
    if (!report.definitionKinds().isEmpty()) {
      String kinds =
          report.definitionKinds().stream().map(Coded::label).collect(Collectors.joining("; "));
      notes.add(say("studies.defined-by", Map.of("kinds", kinds)));
    }
    report.note().ifPresent(notes::add);
    return notes;
  }

  private static String months(Duration time) {
    return FollowUps.plain(time.value()) + " " + time.unit().symbol();
  }
}
