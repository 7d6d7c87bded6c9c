package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import java.util.Map;
import java.util.Optional;

/** Why a value cannot stand beside the others: it is counted or measured in another way. */
public sealed interface Incomparable extends Reason {
  /**
   * It is not known from when a time is counted.
   *
   * @param report the report; empty for the list of patients
   * @param standsWith the clock with which such values stand, if that is not the one taken; empty
   *     where the question takes them off
   */
  record ClockNotStated(Optional<OutcomeReport> report, Optional<Clock> standsWith)
      implements Incomparable {
    @Override
    public String code() {
      return "clock-not-stated";
    }

    @Override
    public String sentence() {
      String value = ReportWords.of(report);
      return standsWith
          .map(
              clock ->
                  say(
                      "selection.clock-not-stated-elsewhere",
                      Map.of("value", value, "clock", clock.label())))
          .orElseGet(() -> say("selection.clock-not-stated", Map.of("value", value)));
    }
  }

  /**
   * A time is counted from another event than those that are taken.
   *
   * @param value the report in words, or the list of patients
   */
  record OtherClock(String value, Clock own, Clock taken) implements Incomparable {
    @Override
    public String code() {
      return "different-clock";
    }

    @Override
    public String sentence() {
      return value.contains(own.label())
          ? say("selection.not-from-clock", Map.of("value", value, "clock", taken.label()))
          : say(
              "selection.different-clock",
              Map.of("value", value, "own", own.label(), "clock", taken.label()));
    }
  }

  /**
   * A cost is in another currency than those that are taken.
   *
   * @param report the report; empty for the list of patients
   * @param own ISO 4217 letters; empty where none is stated
   * @param taken letters of those that are taken
   */
  record OtherCurrency(Optional<OutcomeReport> report, Optional<String> own, String taken)
      implements Incomparable {
    @Override
    public String code() {
      return "different-currency";
    }

    @Override
    public String sentence() {
      String value = ReportWords.of(report);
      return own.map(
              letters ->
                  say(
                      "selection.different-currency",
                      Map.of("value", value, "own", letters, "currency", taken)))
          .orElseGet(
              () ->
                  say("selection.currency-not-stated", Map.of("value", value, "currency", taken)));
    }
  }

  /** The unit of the value measures something else than that of the outcome. */
  record UnitDoesNotFit(Unit printed, Unit needed) implements Incomparable {
    @Override
    public String code() {
      return "unit-does-not-fit";
    }

    @Override
    public String sentence() {
      return say(
          "selection.unit-does-not-fit",
          Map.of("printed", printed.symbol(), "needed", needed.symbol()));
    }
  }
}
