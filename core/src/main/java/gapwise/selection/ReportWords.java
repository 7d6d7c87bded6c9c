package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.unit.Duration;
import gapwise.evidence.vocabulary.Clock;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;

/** What tells one report of an arm from another, in words. */
final class ReportWords {
  private ReportWords() {}

  /** Such as "The value at 12 months counted from injury (table 2)"; the list where empty. */
  static String of(Optional<OutcomeReport> report) {
    return report.map(ReportWords::value).orElseGet(() -> say("selection.patient-list"));
  }

  private static String value(OutcomeReport report) {
    String value = value(report.timePoint(), report.clock());
    String placed =
        report
            .provenance()
            .place()
            .map(place -> say("selection.value-in-place", Map.of("value", value, "place", place)))
            .orElse(value);
    return report
        .definition()
        .map(words -> say("selection.value-defined", Map.of("value", placed, "words", words)))
        .orElse(placed);
  }

  /** Without a fraction where it is whole. */
  static String number(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private static String value(Optional<Duration> time, Optional<Clock> clock) {
    Optional<String> at = time.map(one -> number(one.value()) + " " + one.unit().symbol());
    if (at.isPresent() && clock.isPresent()) {
      return say("selection.value-at-from", Map.of("time", at.get(), "clock", clock.get().label()));
    }
    if (at.isPresent()) {
      return say("selection.value-at", Map.of("time", at.get()));
    }
    return clock
        .map(from -> say("selection.value-from", Map.of("clock", from.label())))
        .orElseGet(() -> say("selection.value"));
  }
}
