package gapwise.evidence.check;

import gapwise.evidence.EventCount;
import gapwise.evidence.rule.CountAt;
import gapwise.evidence.rule.CountRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A printed percentage and the counts beside it: they should agree to the last digit printed, and a
 * percentage of a known total should come from some whole number. Papers cut off digits as well as
 * round them, so that up to one unit of the last digit is no contradiction (common practice, no
 * source).
 */
final class PercentAgainstCount implements CountRule {
  @Override
  public void check(CountAt at, Findings findings) {
    EventCount count = at.count();
    if (count.percentAsReported().isEmpty() || count.total().isEmpty()) {
      return;
    }
    double percent = count.percentAsReported().getAsDouble();
    int total = count.total().getAsInt();
    if (count.events().isPresent()) {
      double share = 100.0 * count.events().getAsInt() / total;
      if (!agrees(share, percent)) {
        findings.doubtful(
            at.at(at.percent()),
            "percent-contradicts-count",
            "Printed "
                + Printed.number(percent)
                + " %, but "
                + count.events().getAsInt()
                + " of "
                + total
                + " is "
                + Printed.about(share)
                + " %. Keep both as printed once you have looked; the counts are used.");
      }
    } else {
      double nearest = Math.rint(percent * total / 100);
      if (!agrees(100 * nearest / total, percent)) {
        findings.doubtful(
            at.at(at.percent()),
            "percent-of-no-count",
            Printed.number(percent)
                + " % of "
                + total
                + " is no whole number of them: "
                + Printed.number(nearest)
                + " would be "
                + Printed.about(100 * nearest / total)
                + " %. Check the denominator.");
      }
    }
  }

  /** Less than one unit of the last digit printed away; a trailing zero cannot be seen. */
  private static boolean agrees(double share, double percent) {
    int decimals = Math.max(0, BigDecimal.valueOf(percent).stripTrailingZeros().scale());
    BigDecimal unit = BigDecimal.valueOf(1, decimals);
    return BigDecimal.valueOf(share)
            .subtract(BigDecimal.valueOf(percent))
            .abs()
            .setScale(decimals + 6, RoundingMode.HALF_UP)
            .compareTo(unit)
        < 0;
  }
}
