package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.Standing;
import gapwise.figure.value.Shown;
import gapwise.wording.Moneys;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One reported number of a study as a line of its table.
 *
 * @param outcome name of the outcome
 * @param group for whom
 * @param value the numbers
 * @param notes what must be known to read them
 * @param place where in the paper
 * @param words the paper's words
 */
public record OutcomeLine(
    String outcome, String group, Values value, String notes, String place, String words) {

  static OutcomeLine of(Study study, OutcomeReport report) {
    return new OutcomeLine(
        report.outcome().label(),
        group(study, report.scope()),
        Values.asReported(report.value()),
        String.join("; ", notes(report)),
        report.provenance().place().orElse(""),
        report.provenance().words().orElse(""));
  }

  private static String group(Study study, Scope scope) {
    if (scope instanceof Scope.OneArm one) {
      return arm(study, one.arm());
    }
    if (scope instanceof Scope.Comparison pair) {
      return say(
          "studies.one-against-other",
          Map.of("one", arm(study, pair.arm()), "other", arm(study, pair.against())));
    }
    return say("studies.all-groups");
  }

  private static String arm(Study study, String id) {
    return study
        .arm(id)
        .map(arm -> arm.label().orElse(arm.method().principal().shortLabel()))
        .orElse(id);
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
    if (report.followed().isPresent()) {
      notes.add(say("studies.followed", Map.of("people", report.followed().getAsInt())));
    }
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
    return Shown.number(time.value()) + " " + time.unit().symbol();
  }
}
