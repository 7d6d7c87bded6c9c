package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import java.util.OptionalDouble;

/** A printed median at which the curve is far from one half. */
final class CurveMedian implements CurveRule {
  /** Reading error along the axis of time, as a share of it; common practice, no source. */
  private static final double OF_AXIS = 0.03;

  @Override
  public void check(CurveAt at, Findings findings) {
    PublishedCurve curve = at.curve();
    OptionalDouble printed = curve.totals().median();
    if (printed.isEmpty()) {
      return;
    }
    OptionalDouble half = curve.timeOf(50);
    OptionalDouble earliest = curve.timeOf(50 + CurveAt.READING_ERROR);
    if (earliest.isEmpty()) {
      findings.doubtful(
          at.part("median"),
          "curve-median-differs",
          "The paper prints a median of "
              + at.time(printed.getAsDouble())
              + ", but the curve never comes to one half. Check which curve the median belongs to.");
      return;
    }
    double slack = OF_AXIS * curve.lastTime();
    double latest = curve.timeOf(50 - CurveAt.READING_ERROR).orElse(curve.lastTime());
    if (printed.getAsDouble() < earliest.getAsDouble() - slack
        || printed.getAsDouble() > latest + slack) {
      findings.doubtful(
          at.part("median"),
          "curve-median-differs",
          "The paper prints a median of "
              + at.time(printed.getAsDouble())
              + ", but the curve comes to one half at "
              + at.time(half.orElse(earliest.getAsDouble()))
              + ". Check the axis, the unit and the arm.");
    }
  }
}
