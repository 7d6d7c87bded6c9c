package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.vocabulary.CurveShows;

/** A share with the event that falls, or one without it that rises, beyond reading error. */
final class CurveTurnsBack implements CurveRule {
  @Override
  public void check(CurveAt at, Findings findings) {
    CurveShows shows = at.curve().shows();
    Point furthest = at.curve().points().get(0);
    for (Point point : at.curve().points()) {
      double back = shows.without(point.share()) - shows.without(furthest.share());
      if (back > CurveAt.READING_ERROR) {
        findings.impossible(at.part("share"), "curve-turns-back", message(at, furthest, point));
        return;
      }
      furthest = back < 0 ? point : furthest;
    }
  }

  private static String message(CurveAt at, Point before, Point after) {
    boolean with = at.curve().shows() == CurveShows.WITH_EVENT;
    CurveShows other = with ? CurveShows.WITHOUT_EVENT : CurveShows.WITH_EVENT;
    return "The share goes from "
        + Printed.about(before.share())
        + " % at "
        + at.time(before.time())
        + " to "
        + Printed.about(after.share())
        + " % at "
        + at.time(after.time())
        + ", but a share "
        + at.curve().shows().label()
        + (with ? " can only rise" : " can only fall")
        + ". Correct the points, or write "
        + other.code()
        + " in shows if the figure shows the share "
        + other.label()
        + ".";
  }
}
