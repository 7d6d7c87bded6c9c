package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * A printed number of events that no patients behind the curve can have had. At a drop each event
 * takes 1 of those still followed (Kaplan and Meier 1958): most events fit when nobody is lost
 * before, fewest when everybody lost is lost late, just before the next number at risk.
 */
final class CurveEvents implements CurveRule {
  @Override
  public void check(CurveAt at, Findings findings) {
    OptionalInt start = at.curve().start();
    OptionalInt events = at.curve().totals().events();
    if (start.isEmpty() || events.isEmpty()) {
      return;
    }
    int printed = events.getAsInt();
    if (printed > start.getAsInt()) {
      findings.impossible(
          at.part("events"),
          "curve-more-events-than-patients",
          "Found "
              + printed
              + " events, but the curve starts with "
              + start.getAsInt()
              + " patients. Correct one of them.");
      return;
    }
    double slack = 0.5 + start.getAsInt() * CurveAt.READING_ERROR / 100;
    double most = start.getAsInt() * (1 - at.curve().lastWithout() / 100) + slack;
    double fewest = fewest(at.curve(), start.getAsInt()) - slack;
    if (printed > most || printed < fewest) {
      findings.doubtful(
          at.part("events"),
          "curve-events-differ",
          "The curve of "
              + start.getAsInt()
              + " patients leaves room for "
              + Math.max(0, (int) Math.ceil(fewest))
              + " to "
              + Math.min(start.getAsInt(), (int) Math.floor(most))
              + " events, and the paper prints "
              + printed
              + ". Check the points, the patients, and whether the paper counts the same event.");
    }
  }

  /** As few events as the falls between numbers at risk allow. */
  private static double fewest(PublishedCurve curve, int start) {
    List<AtRisk> marks = new ArrayList<>(List.of(new AtRisk(0, start)));
    curve.atRisk().stream().filter(mark -> mark.time() > 0).forEach(marks::add);
    double events = 0;
    for (int i = 0; i + 1 < marks.size(); i++) {
      double before = without(curve, marks.get(i).time());
      double after = without(curve, marks.get(i + 1).time());
      int left = marks.get(i + 1).patients();
      if (after > 0 && after < before) {
        events += Math.log(before / after) / -Math.log1p(-1.0 / (left + 1));
      }
    }
    boolean fellLater =
        without(curve, marks.get(marks.size() - 1).time()) - curve.lastWithout()
            > CurveAt.READING_ERROR;
    return events + (fellLater ? 1 : 0);
  }

  /** Percentage without the event just before a time. */
  private static double without(PublishedCurve curve, double time) {
    double share = 100;
    for (Point point : curve.points()) {
      if (point.time() >= time) {
        break;
      }
      share = Math.min(share, curve.shows().without(point.share()));
    }
    return share;
  }
}
