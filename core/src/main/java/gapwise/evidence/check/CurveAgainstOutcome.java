package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Scope;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.unit.Unit;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A curve and the row of the same outcome that tell of different times. The row's median may be of
 * all patients or only of those with the event, so it is held against both.
 */
final class CurveAgainstOutcome implements CurveRule {
  /** Times may differ by so much of themselves; common practice, no source. */
  private static final double SHARE = 0.2;

  @Override
  public void check(CurveAt at, Findings findings) {
    for (ReportAt row : ReportAt.counting(at.study())) {
      boolean same =
          row.report().outcome().equals(at.curve().outcome())
              && row.report().scope().equals(new Scope.OneArm(at.curve().arm()))
              && row.report().subgroup().isEmpty();
      row.quantity()
          .filter(summary -> same && summary.unit().dimension() == Unit.Dimension.TIME)
          .ifPresent(summary -> compare(at, summary, findings));
    }
  }

  private static void compare(CurveAt at, QuantitySummary summary, Findings findings) {
    PublishedCurve curve = at.curve();
    OptionalInt events = curve.totals().events();
    if (summary.n().isPresent()
        && events.isPresent()
        && summary.n().getAsInt() > curve.start().orElse(events.getAsInt())) {
      findings.doubtful(
          at.part("events"),
          "curve-against-outcome",
          "The sheet outcomes gives this time for "
              + summary.n().getAsInt()
              + " patients, more than the curve can have seen with the event. Check whether both are"
              + " of the same arm.");
    }
    OptionalDouble median = summary.in(curve.unit()).median();
    OptionalDouble ofEvents = curve.timeOf(100 - (100 - curve.lastWithout()) / 2);
    if (median.isEmpty() || ofEvents.isEmpty()) {
      return;
    }
    double latest = curve.timeOf(50).orElse(curve.lastTime());
    double low = Math.min(ofEvents.getAsDouble(), latest) * (1 - SHARE);
    double high = Math.max(ofEvents.getAsDouble(), latest) * (1 + SHARE);
    if (median.getAsDouble() < low || median.getAsDouble() > high) {
      findings.doubtful(
          at.part("share"),
          "curve-against-outcome",
          "The sheet outcomes gives a median of "
              + at.time(median.getAsDouble())
              + " for this arm, but half of those with the event had it by "
              + at.time(ofEvents.getAsDouble())
              + " on the curve. Check the axis, the unit and the arm, and from when both count.");
    }
  }
}
