package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.SummaryAt;
import gapwise.evidence.rule.SummaryRule;

/**
 * A standard deviation that the range does not allow: of n values between a and b it is at most (b
 * - a)/2 times the root of n/(n - 1), reached when half lie at each end (Popoviciu, Mathematica
 * 1935;9:129). For each value (x - a)(b - x) is 0 or more, so the mean square about the mean m is
 * at most (b - m)(m - a), which is at most ((b - a)/2)^2. Printed ends are rounded, hence the
 * tolerance.
 */
final class SpreadAgainstRange implements SummaryRule {
  /** Ends and deviation are rounded in print; our choice. */
  private static final double TOLERANCE = 1.05;

  @Override
  public void check(SummaryAt at, Findings findings) {
    QuantitySummary s = at.summary();
    if (s.standardDeviation().isEmpty() || s.minimum().isEmpty() || s.maximum().isEmpty()) {
      return;
    }
    double n = Math.max(2, at.people().orElse(2));
    double range = s.maximum().getAsDouble() - s.minimum().getAsDouble();
    double most = range / 2 * Math.sqrt(n / (n - 1));
    double deviation = s.standardDeviation().getAsDouble();
    if (deviation > most * TOLERANCE) {
      findings.impossible(
          at.at("sd"),
          "sd-larger-than-range-allows",
          "SD "
              + Printed.number(deviation)
              + " cannot be: values from "
              + Printed.number(s.minimum().getAsDouble())
              + " to "
              + Printed.number(s.maximum().getAsDouble())
              + " have an SD of at most "
              + Printed.about(most)
              + ". Check whether one of the numbers is something else.");
    }
  }
}
