package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.vocabulary.CurveShows;

/** A curve that does not start where nobody has had the event yet. */
final class CurveStart implements CurveRule {
  /** Percentage points at time 0; twice the reading error, and some. Common practice, no source. */
  private static final double AT_ZERO = 5;

  /** The same where the first point comes later, when some may have had the event. */
  private static final double LATER = 40;

  @Override
  public void check(CurveAt at, Findings findings) {
    Point first = at.curve().points().get(0);
    double gone = 100 - at.curve().shows().without(first.share());
    if (gone <= (first.time() > 0 ? LATER : AT_ZERO)) {
      return;
    }
    boolean with = at.curve().shows() == CurveShows.WITH_EVENT;
    findings.doubtful(
        at.part("share"),
        "curve-start",
        "The curve starts with "
            + Printed.about(first.share())
            + " % at "
            + at.time(first.time())
            + ", but a share "
            + at.curve().shows().label()
            + " starts near "
            + (with ? "0" : "100")
            + " %. Check whether the figure shows the share "
            + (with ? CurveShows.WITHOUT_EVENT : CurveShows.WITH_EVENT).label()
            + ", and whether its first points were read.");
  }
}
