package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.SummaryAt;
import gapwise.evidence.rule.SummaryRule;

/**
 * A standard deviation that is large beside the mean of a quantity that cannot be negative: larger
 * than the mean it is often a slip; larger than half of it, the mean less two standard deviations
 * lies below 0, so the values are skewed (common practice, no source).
 */
final class SpreadAgainstMean implements SummaryRule {
  @Override
  public void check(SummaryAt at, Findings findings) {
    QuantitySummary s = at.summary();
    if (!at.neverNegative() || s.mean().isEmpty() || s.standardDeviation().isEmpty()) {
      return;
    }
    double mean = s.mean().getAsDouble();
    double deviation = s.standardDeviation().getAsDouble();
    if (deviation > mean) {
      findings.doubtful(
          at.at("sd"),
          "sd-larger-than-mean",
          "SD "
              + Printed.number(deviation)
              + " is larger than the mean "
              + Printed.number(mean)
              + ". Check that it is an SD and stands in the same unit.");
    } else if (mean - 2 * deviation < 0) {
      findings.doubtful(
          at.at("sd"),
          "skewed",
          "The mean "
              + Printed.number(mean)
              + " less two SD of "
              + Printed.number(deviation)
              + " is below 0, so the values are skewed. Look for a median and quartiles or a range"
              + " and enter those too.");
    }
  }
}
