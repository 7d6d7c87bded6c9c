package gapwise.evidence.check;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import java.util.OptionalDouble;

/** An effect outside its own interval. */
final class IntervalOfEffect implements ReportRule {
  @Override
  public void check(ReportAt at, Findings findings) {
    if (at.report().value() instanceof ReportedValue.Effect effect) {
      boolean below = effect.estimate() < effect.lower().orElse(Double.NEGATIVE_INFINITY);
      boolean above = effect.estimate() > effect.upper().orElse(Double.POSITIVE_INFINITY);
      if (below || above) {
        findings.impossible(
            at.part("effect_estimate"),
            "estimate-outside-interval",
            "The estimate "
                + Printed.number(effect.estimate())
                + " lies outside its interval "
                + limit(effect.lower())
                + " to "
                + limit(effect.upper())
                + ". Check which of them was misread.");
      }
    }
  }

  /** Papers may print one limit and not the other. */
  private static String limit(OptionalDouble limit) {
    return limit.isPresent() ? Printed.number(limit.getAsDouble()) : "(not given)";
  }
}
