package gapwise.evidence.check;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;

/** An effect outside its own interval. */
final class IntervalOfEffect implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    if (at.report().value() instanceof ReportedValue.Effect effect) {
      double lower = effect.lower().orElse(Double.NEGATIVE_INFINITY);
      double upper = effect.upper().orElse(Double.POSITIVE_INFINITY);
      if (effect.estimate() < lower || effect.estimate() > upper) {
        findings.impossible(
            at.part("effect_estimate"),
            "estimate-outside-interval",
            "The estimate "
                + Printed.number(effect.estimate())
                + " lies outside its interval "
                + Printed.number(lower)
                + " to "
                + Printed.number(upper)
                + ". Check which of the three was misread.");
      }
    }
  }
}
