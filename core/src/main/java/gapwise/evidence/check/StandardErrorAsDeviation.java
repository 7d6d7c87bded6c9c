package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.SummaryAt;
import gapwise.evidence.rule.SummaryRule;
import java.util.OptionalInt;

/**
 * A standard deviation that looks like a standard error, the commonest slip (common practice, no
 * source). Signs: the 95 % interval of the mean is as wide as the "SD" alone would make it without
 * dividing by the root of n; or the range is far wider than so many values with that SD have, and
 * fits once the SD is multiplied by the root of n.
 */
final class StandardErrorAsDeviation implements SummaryRule {
  private static final int FEWEST = 5;

  /** Values of a sample of some 10 to 100 spread over 3 to 6 SD; more than 9 is not credible. */
  private static final double WIDEST_RANGE_IN_DEVIATIONS = 9;

  private static final double WIDTH_OF_95_PERCENT = 2 * 1.96;

  /** How far the interval may be off, for t quantiles and rounding. */
  private static final double TOLERANCE = 0.25;

  @Override
  public void check(SummaryAt at, Findings findings) {
    QuantitySummary s = at.summary();
    OptionalInt people = at.people();
    if (s.standardDeviation().isEmpty() || people.isEmpty() || people.getAsInt() < FEWEST) {
      return;
    }
    double deviation = s.standardDeviation().getAsDouble();
    double root = Math.sqrt(people.getAsInt());
    if (deviation > 0 && (byInterval(s, deviation) || byRange(s, deviation, root))) {
      findings.doubtful(
          at.at("sd"),
          "sd-looks-like-se",
          "SD "
              + Printed.number(deviation)
              + " of "
              + people.getAsInt()
              + " looks like a standard error; as one it would mean an SD of "
              + Printed.about(deviation * root)
              + ". Check what the paper prints, and use the column for the standard error if it is"
              + " one.");
    }
  }

  private static boolean byInterval(QuantitySummary s, double deviation) {
    if (s.lowerLimit().isEmpty() || s.upperLimit().isEmpty()) {
      return false;
    }
    double width = s.upperLimit().getAsDouble() - s.lowerLimit().getAsDouble();
    return Math.abs(width / (WIDTH_OF_95_PERCENT * deviation) - 1) < TOLERANCE;
  }

  private static boolean byRange(QuantitySummary s, double deviation, double root) {
    if (s.minimum().isEmpty() || s.maximum().isEmpty()) {
      return false;
    }
    double range = s.maximum().getAsDouble() - s.minimum().getAsDouble();
    return range > WIDEST_RANGE_IN_DEVIATIONS * deviation
        && range < WIDEST_RANGE_IN_DEVIATIONS * deviation * root;
  }
}
