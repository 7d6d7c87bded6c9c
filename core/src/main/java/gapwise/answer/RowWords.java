package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Conversions;
import gapwise.selection.SelectedRow;
import gapwise.selection.SpreadBasis;
import gapwise.sentence.Counted;
import gapwise.wording.Moneys;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What stands beside the value of one series: what was counted, and how it was come by. */
record RowWords(Outcome outcome, Conversions conversions) {

  /**
   * "27 of 31" for events, excellent and good of all for grades; how many patients or limbs a mean
   * speaks of.
   */
  String counted(SelectedRow row) {
    if (row.value() instanceof ReportedValue.Quantity) {
      return row.speaksOf().isPresent()
          ? Counted.grouped(row.speaksOf().getAsInt())
          : say("wording.not-stated");
    }
    if (row.value() instanceof ReportedValue.Tally tally && row.speaksOf().isPresent()) {
      return say(
          "answer.events-in-patients",
          Map.of("events", tally.events(), "patients", row.speaksOf().getAsInt()));
    }
    if (row.value() instanceof ReportedValue.Events events && events.count().isComplete()) {
      return Values.ofTotal(events.count().events().getAsInt(), events.count().total().getAsInt());
    }
    if (row.value() instanceof ReportedValue.Categories grades) {
      return Values.ofTotal(grades.good(), grades.sum());
    }
    return Values.of(outcome, row.value()).counted();
  }

  /** The design, and how the numbers were come by where they are not as printed. */
  String detail(Blocks.Line line) {
    SelectedRow row = line.row();
    List<String> parts = new ArrayList<>();
    row.study().design().ifPresent(design -> parts.add(design.label()));
    if (row.value() instanceof ReportedValue.Quantity quantity
        && quantity.summary().mean().isEmpty()) {
      parts.add(say("answer.row-median"));
    }
    spread(line).ifPresent(parts::add);
    if (line.meanOfZero()) {
      parts.add(say("answer.row-mean-of-zero"));
    }
    switch (row.basis()) {
      case REPORTED -> {}
      case COUNTED_BACK -> parts.add(say("answer.row-counted-back"));
      case FROM_PATIENTS -> parts.add(say("answer.row-from-patients"));
      case FROM_PATIENTS_IN_RANGE, SUBGROUP -> PatientsMeant.words(row).ifPresent(parts::add);
    }
    row.otherSideWords().ifPresent(parts::add);
    row.report().flatMap(OutcomeReport::money).map(Moneys::words).ifPresent(parts::add);
    return String.join(", ", parts);
  }

  /** From what a standard deviation is worked out, where it stands in no print. */
  private Optional<String> spread(Blocks.Line line) {
    boolean used = line.study().variance().isPresent();
    if (!(line.row().value() instanceof ReportedValue.Quantity quantity) || !used) {
      return Optional.empty();
    }
    return switch (SpreadBasis.of(line.row(), quantity.summary(), conversions)) {
      case PRINTED, NONE -> Optional.empty();
      case STANDARD_ERROR -> Optional.of(say("answer.row-spread-from-standard-error"));
      case LIMITS -> Optional.of(say("answer.row-spread-from-limits"));
      case QUARTILES -> Optional.of(say("answer.row-spread-from-quartiles"));
      case TEST -> Optional.of(say("answer.row-spread-from-test"));
      case RANGE -> Optional.of(say("answer.row-spread-from-range"));
      case QUARTILES_AND_RANGE -> Optional.of(say("answer.row-spread-from-quartiles-and-range"));
    };
  }
}
