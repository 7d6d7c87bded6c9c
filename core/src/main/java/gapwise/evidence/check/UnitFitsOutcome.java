package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.unit.Unit;
import java.util.Optional;

/** A quantity in a unit that does not measure what the outcome is. */
final class UnitFitsOutcome implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    Optional<Unit> expected = at.report().outcome().unit();
    Optional<Unit> found = at.quantity().map(QuantitySummary::unit);
    if (expected.isEmpty()
        || found.isEmpty()
        || expected.get().dimension() == found.get().dimension()) {
      return;
    }
    findings.impossible(
        at.part("unit"),
        "wrong-unit",
        "The unit "
            + found.get().symbol()
            + " does not measure '"
            + at.report().outcome().label()
            + "', which is compared in "
            + expected.get().symbol()
            + ". Correct the unit or choose another outcome.");
  }
}
