package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.unit.Unit;

/**
 * An external fixation index that cannot be or seldom is. The usual slip is days per centimetre
 * entered as months per centimetre (common practice, no source).
 */
final class FixationIndexLimits implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    boolean index =
        at.code().equals("external-fixation-index")
            && at.quantity()
                .filter(s -> s.unit().dimension() == Unit.Dimension.TIME_PER_LENGTH)
                .isPresent();
    if (!index) {
      return;
    }
    QuantitySummary printed = at.quantity().orElseThrow();
    var centre = printed.centre();
    if (centre.isEmpty()) {
      return;
    }
    double value = printed.unit().to(Unit.MONTHS_PER_CENTIMETRE, centre.getAsDouble());
    RecordPart part = at.part(printed.mean().isPresent() ? "mean" : "median");
    String found = Printed.number(centre.getAsDouble()) + " " + printed.unit().symbol();
    String hint = value >= 20 && value <= 90 ? " A value of 20 to 90 is usually days/cm." : "";
    if (value < 0.2 || value > 10) {
      findings.impossible(
          part,
          "index-impossible",
          "An index of "
              + found
              + " cannot be: 0.2 to 10 months/cm were expected."
              + hint
              + " Check number and unit.");
    } else if (value < 0.7 || value > 3) {
      findings.doubtful(
          part,
          "index-unusual",
          "An index of "
              + found
              + " is unusual: 0.7 to 3 months/cm were expected. Check number and unit.");
    }
  }
}
