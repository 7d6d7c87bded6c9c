package gapwise.selection;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Clock;
import java.util.Optional;

/**
 * A report whose numbers can be used.
 *
 * @param report the report
 * @param value its numbers, counted back where only a percentage is printed
 * @param countedBack whether they were
 */
record Candidate(OutcomeReport report, ReportedValue value, boolean countedBack) {

  Optional<Clock> clock() {
    return report.clock();
  }

  SelectedRow.Basis basis() {
    return countedBack ? SelectedRow.Basis.COUNTED_BACK : SelectedRow.Basis.REPORTED;
  }
}
