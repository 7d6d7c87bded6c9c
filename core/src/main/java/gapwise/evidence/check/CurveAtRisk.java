package gapwise.evidence.check;

import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import java.util.List;
import java.util.OptionalInt;

/** Numbers at risk that rise, or that are more than the curve started with. */
final class CurveAtRisk implements CurveRule {
  @Override
  public void check(CurveAt at, Findings findings) {
    List<AtRisk> marks = at.curve().atRisk();
    for (int i = 1; i < marks.size(); i++) {
      if (marks.get(i).patients() > marks.get(i - 1).patients()) {
        findings.impossible(
            at.part("at_risk"),
            "curve-at-risk-rises",
            "Found "
                + marks.get(i).patients()
                + " at risk at "
                + at.time(marks.get(i).time())
                + " after "
                + marks.get(i - 1).patients()
                + " at "
                + at.time(marks.get(i - 1).time())
                + ", but the number can only fall. Correct one of them.");
        return;
      }
    }
    OptionalInt start = at.curve().totals().patients();
    if (start.isEmpty() || marks.isEmpty()) {
      return;
    }
    AtRisk first = marks.get(0);
    if (first.patients() > start.getAsInt()
        || (first.time() == 0 && first.patients() != start.getAsInt())) {
      findings.impossible(
          at.part("at_risk"),
          "curve-at-risk-start",
          "Found "
              + first.patients()
              + " at risk at "
              + at.time(first.time())
              + ", but the curve starts with "
              + start.getAsInt()
              + " patients. Correct one of them, or clear patients where the numbers at risk say it.");
    }
  }
}
