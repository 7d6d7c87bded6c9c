package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.SummaryAt;
import gapwise.evidence.rule.SummaryRule;

/**
 * The confidence interval of a mean: it must contain the mean, lies about evenly around it, and is
 * as wide as SD and n make it (common practice, no source, for the tolerances).
 */
final class IntervalOfMean implements SummaryRule {
  /** The mean may lie this share of the half width off the middle. */
  private static final double OFF_MIDDLE = 0.5;

  /** The width may differ by this share; small samples and rounding need room. */
  private static final double OFF_WIDTH = 0.5;

  private static final int FEWEST = 10;

  @Override
  public void check(SummaryAt at, Findings findings) {
    QuantitySummary s = at.summary();
    if (s.mean().isEmpty() || s.lowerLimit().isEmpty() || s.upperLimit().isEmpty()) {
      return;
    }
    double mean = s.mean().getAsDouble();
    double lower = s.lowerLimit().getAsDouble();
    double upper = s.upperLimit().getAsDouble();
    String interval = "the 95 % interval " + Printed.number(lower) + " to " + Printed.number(upper);
    double half = (upper - lower) / 2;
    if (mean < lower || mean > upper) {
      findings.impossible(
          at.at("ci_lower"),
          "mean-outside-interval",
          "The mean "
              + Printed.number(mean)
              + " lies outside "
              + interval
              + ". Check which of the three was misread.");
    } else if (half > 0 && Math.abs(mean - (lower + half)) > OFF_MIDDLE * half) {
      findings.doubtful(
          at.at("ci_lower"),
          "interval-lopsided",
          "The mean "
              + Printed.number(mean)
              + " lies far from the middle of "
              + interval
              + ". Check for a misprint, and whether it is an interval of the mean.");
    }
    checkWidth(at, half, interval, findings);
  }

  private static void checkWidth(SummaryAt at, double half, String interval, Findings findings) {
    QuantitySummary s = at.summary();
    boolean comparable =
        s.standardDeviation().isPresent()
            && s.n().isPresent()
            && s.n().getAsInt() >= FEWEST
            && s.standardDeviation().getAsDouble() > 0;
    if (!comparable) {
      return;
    }
    double expected = 1.96 * s.standardDeviation().getAsDouble() / Math.sqrt(s.n().getAsInt());
    if (Math.abs(half / expected - 1) > OFF_WIDTH) {
      findings.doubtful(
          at.at("ci_lower"),
          "interval-against-sd",
          "SD "
              + Printed.number(s.standardDeviation().getAsDouble())
              + " of "
              + s.n().getAsInt()
              + " gives an interval of about ± "
              + Printed.about(expected)
              + ", but "
              + interval
              + " is printed. Check what each number is.");
    }
  }
}
