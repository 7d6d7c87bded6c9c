package gapwise.evidence.check;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;

/** A time without its origin and without a reason why, for times on different clocks never mix. */
final class ClockStated implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    boolean needed =
        at.report().outcome().needsClock()
            && at.report().value() instanceof ReportedValue.Quantity
            && at.report().clock().isEmpty()
            && !at.report().missing().containsKey("clock");
    if (needed) {
      findings.doubtful(
          at.part("clock"),
          "clock-missing",
          "'"
              + at.report().outcome().label()
              + "' has no clock. Say where the time starts, or write NR if the paper does not.");
    }
  }
}
